import { crossing } from './root.ts';
import { incompleteBeta } from './special-functions.ts';

/**
 * F distribution function.
 *
 * @param degrees  of the numerator and of the denominator
 * Source: Abramowitz and Stegun, 26.6.2.
 * Check:  fCdf(4.9646, [1, 10]) = 0.95.
 */
export function fCdf(x: number, degrees: readonly [number, number]): number {
  if (x <= 0) return 0;
  const [top, bottom] = degrees;
  return incompleteBeta((top * x) / (top * x + bottom), top / 2, bottom / 2);
}

/** F quantile. Check: fQuantile(0.95, [4, 20]) = 2.8661. */
export function fQuantile(p: number, degrees: readonly [number, number]): number {
  return crossing((x) => fCdf(x, degrees), p, { low: 0, high: 10 });
}
