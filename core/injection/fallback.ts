import type { Note } from '../result/index.ts';
import type { Explanation } from '../units/index.ts';
import { practice } from './practice.ts';
import type { Setup } from './setup.ts';

/** What has to come in when fluid fails. */
export type Fallback = {
  /** [Pa gauge]; null where nothing is known of this engine without fluid. */
  readonly boost: number | null;
  /** Longest time to act in [s], common practice. */
  readonly actWithin: number;
  readonly notes: readonly Note[];
  readonly explanation: Explanation;
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
  const explanation: Explanation = {
    id: 'injection/fallback',
    formula: 'boost = min(sound, knock - margin), of those that are known',
    tex: String.raw`p_\mathrm{fallback} = \min(p_\mathrm{sound},\; p_\mathrm{knock}-m)`,
    inputs: [
      ...(sound === null ? [] : [{ symbol: 'sound', value: sound, kind: 'boost' as const }]),
      ...(knockLimitedBoost_kPa === null
        ? []
        : [{ symbol: 'knock', value: knockLimitedBoost_kPa * 1e3, kind: 'boost' as const }]),
      { symbol: 'margin', value: practice.fallbackMargin, kind: 'boost', isDifference: true },
    ],
    source: 'what this engine has shown without fluid, as typed on the setup sheet; margin: common practice',
    validRange: [],
  };
  const quickly: Note = { code: 'injection/fallback-quickly', facts: { seconds: practice.actWithin } };
  if (sound === null && belowKnock === null)
    return {
      boost: null,
      actWithin: practice.actWithin,
      notes: [{ code: 'injection/fallback-unknown', facts: {} }, quickly],
      explanation,
    };
  const boost = Math.min(sound ?? Infinity, belowKnock ?? Infinity);
  return {
    boost,
    actWithin: practice.actWithin,
    notes: [
      { code: 'injection/fallback', facts: { boost, from: boost === sound ? 'sound' : 'knock' } },
      quickly,
    ],
    explanation,
  };
}
