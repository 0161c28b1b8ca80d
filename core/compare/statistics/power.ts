import { noncentralTCdf } from './noncentral-t.ts';
import { crossing } from './root.ts';
import { tQuantile } from './student-t.ts';

/**
 * Chance that a two-sided t test sees an effect that stands `shift` standard errors from zero.
 *
 * Source: noncentral t; Cohen, Statistical Power Analysis, 2nd ed. (1988), chapter 2.
 * Check:  20 a side, one deviation apart: 0.8690 (R documentation of power.t.test).
 */
export function powerOfT(shift: number, degrees: number, alpha = 0.05): number {
  return beyond(tQuantile(1 - alpha / 2, degrees), shift, degrees);
}

function beyond(limit: number, shift: number, degrees: number): number {
  const away = Math.min(mostShift, Math.abs(shift));
  return 1 - noncentralTCdf(limit, degrees, away) + noncentralTCdf(-limit, degrees, away);
}

/** Beyond this the noncentral t is certain for every purpose here, and its series begins to underflow. */
const mostShift = 30;

/**
 * The shift, in standard errors, that is seen with the given chance.
 *
 * Check: three a side: 3.071 deviations apart, which is 3.761 standard errors.
 */
export function detectableShift(degrees: number, chance = 0.8, alpha = 0.05): number {
  const limit = tQuantile(1 - alpha / 2, degrees);
  return crossing((shift) => beyond(limit, shift, degrees), chance, {
    low: 0,
    high: Math.min(mostShift, limit + 4),
  });
}

/**
 * Chance that two one-sided tests prove a difference to lie inside plus or minus a margin.
 *
 * @param d  true difference and margin in standard errors
 *
 * Valid:  a difference of bivariate noncentral t taken as of two independent tails, which is exact where one
 *         bound dominates and a little low elsewhere (Phillips, J. Pharmacokinet. Biopharm. 18 (1990) 137).
 */
export function powerOfEquivalence(
  d: { readonly shift: number; readonly margin: number },
  degrees: number,
  alpha = 0.05,
): number {
  const limit = tQuantile(1 - alpha, degrees);
  const fails = (away: number) =>
    noncentralTCdf(limit, degrees, Math.max(-mostShift, Math.min(mostShift, away)));
  return Math.max(0, 1 - fails(d.margin - d.shift) - fails(d.margin + d.shift));
}

/**
 * Observations a side that a two-sample t test needs.
 *
 * @param effect  difference over the deviation of one observation
 * @returns       whole number from 2; null above `most`
 *
 * Check: one deviation, 80 %: 17 a side; two deviations: 6 (noncentral t, as in Cohen's tables).
 */
export function observationsNeeded(effect: number, chance = 0.8, most = 100_000): number | null {
  for (let n = 2; n <= most; n++) {
    if (powerOfT(Math.abs(effect) * Math.sqrt(n / 2), 2 * n - 2) >= chance) return n;
  }
  return null;
}
