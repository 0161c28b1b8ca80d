import type { RepeatabilityPrior } from '../judge-input.ts';
import { pooledVariance } from '../statistics/index.ts';
import { above } from './pool.ts';

/**
 * Degrees of freedom that the scatter of one day is worth on another, however many pulls told it. The deviation of
 * one car's pulls differs by about a quarter from day to day (common practice), and 1 / sqrt(2 degrees) = 1/4.
 */
const mostFromAnotherDay = 8;

export type EarlierDay = {
  /** Null where the earlier day is not to be used. */
  readonly known: { readonly variance: number; readonly degrees: number } | null;
  /** Deviation of today's pulls where it speaks against the earlier day. */
  readonly refusedBy: number | null;
};

/**
 * What an earlier day of the car tells of today's repeatability: its variance, with degrees that join what its own
 * pulls leave open to what differs between days. Not used where today's pulls scatter beyond it (5 %).
 *
 *   1 / degrees = 1 / own degrees + 1 / 8
 *
 * @param groups  levels of today's pulls, one list per entry
 */
export function earlierDay(
  groups: readonly (readonly number[])[],
  prior: RepeatabilityPrior | null,
): EarlierDay {
  if (!prior || !(prior.degrees > 0)) return { known: null, refusedBy: null };
  const known = {
    variance: prior.deviationShare ** 2,
    degrees: 1 / (1 / prior.degrees + 1 / mostFromAnotherDay),
  };
  const today = pooledVariance(groups);
  return above(today, known) < 0.05
    ? { known: null, refusedBy: Math.sqrt(today.variance) }
    : { known, refusedBy: null };
}
