import { crossing } from './root.ts';
import { incompleteGamma } from './special-functions.ts';

/** Chi-square distribution function. Check: chiSquareCdf(11.0705, 5) = 0.95. */
export function chiSquareCdf(x: number, degrees: number): number {
  return incompleteGamma(degrees / 2, x / 2);
}

/** Chi-square quantile. Check: chiSquareQuantile(0.95, 10) = 18.307 (any chi-square table). */
export function chiSquareQuantile(p: number, degrees: number): number {
  return crossing((x) => chiSquareCdf(x, degrees), p, { low: 0, high: degrees + 10 });
}
