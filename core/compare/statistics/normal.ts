import { crossing } from './root.ts';
import { incompleteGamma } from './special-functions.ts';

/**
 * Standard normal distribution function.
 *
 * Source: P(|Z| < x) = P(1/2, x^2 / 2), Abramowitz and Stegun, 26.4.
 * Check:  normalCdf(1.959964) = 0.975.
 */
export function normalCdf(x: number): number {
  if (Number.isNaN(x)) return Number.NaN;
  const inner = incompleteGamma(0.5, (x * x) / 2);
  return x >= 0 ? 0.5 + inner / 2 : 0.5 - inner / 2;
}

/** Standard normal quantile. Check: normalQuantile(0.975) = 1.959964. */
export function normalQuantile(p: number): number {
  return p === 0.5 ? 0 : crossing(normalCdf, p, { low: -8, high: 8 });
}
