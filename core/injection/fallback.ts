import type { Note } from '../result/index.ts';
import { practice } from './practice.ts';
import type { Setup } from './setup.ts';

/** What has to come in when fluid fails. */
export type Fallback = {
  /** [Pa gauge]; null where nothing is known of this engine without fluid. */
  readonly boost: number | null;
  /** Longest time to act in [s], common practice. */
  readonly actWithin: number;
  readonly notes: readonly Note[];
};

/**
 * The boost to fall back to: what this engine has shown knock-free without fluid, and always a step below where it
 * knocked. Never guessed. Spark goes back to the map of that boost.
 */
export function fallbackOf(setup: Setup): Fallback {
  const { soundBoost_kPa, knockLimitedBoost_kPa } = setup.engine;
  const belowKnock =
    knockLimitedBoost_kPa === null
      ? null
      : Math.max(0, knockLimitedBoost_kPa * 1e3 - practice.fallbackMargin);
  const sound = soundBoost_kPa === null ? null : soundBoost_kPa * 1e3;
  const quickly: Note = { code: 'injection/fallback-quickly', facts: { seconds: practice.actWithin } };
  if (sound === null && belowKnock === null)
    return {
      boost: null,
      actWithin: practice.actWithin,
      notes: [{ code: 'injection/fallback-unknown', facts: {} }, quickly],
    };
  const boost = Math.min(sound ?? Infinity, belowKnock ?? Infinity);
  return {
    boost,
    actWithin: practice.actWithin,
    notes: [
      { code: 'injection/fallback', facts: { boost, from: boost === sound ? 'sound' : 'knock' } },
      quickly,
    ],
  };
}
