import { normalCdf, normalQuantile } from './normal.ts';
import { crossing } from './root.ts';
import { incompleteBeta } from './special-functions.ts';

/** Past this many degrees t and normal agree to the last digit that matters here. */
const many = 1e7;

/**
 * Student's t distribution function; degrees may be broken, as Satterthwaite's are.
 *
 * Source: Abramowitz and Stegun, 26.7.1.
 * Check:  tCdf(2.2281, 10) = 0.975.
 */
export function tCdf(x: number, degrees: number): number {
  if (degrees > many) return normalCdf(x);
  // Near zero the other form loses digits: 1 - degrees / (degrees + x^2).
  const square = x * x;
  const half =
    square < degrees
      ? 0.5 - incompleteBeta(square / (degrees + square), 0.5, degrees / 2) / 2
      : incompleteBeta(degrees / (degrees + square), degrees / 2, 0.5) / 2;
  return x > 0 ? 1 - half : half;
}

/** Student's t quantile. Check: tQuantile(0.975, 3) = 3.1824. */
export function tQuantile(p: number, degrees: number): number {
  if (p === 0.5) return 0;
  if (degrees > many) return normalQuantile(p);
  return crossing((x) => tCdf(x, degrees), p, { low: -10, high: 10 });
}

/** Chance of a t at least this far from zero, either way. */
export function tTwoSided(t: number, degrees: number): number {
  return Math.min(1, 2 * tCdf(-Math.abs(t), degrees));
}
