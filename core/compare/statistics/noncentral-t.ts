import { normalCdf } from './normal.ts';
import { incompleteBeta, lnGamma } from './special-functions.ts';

/**
 * Noncentral t distribution function: t of a mean that truly stands `shift` standard errors from zero.
 *
 * Valid:  |shift| up to 37.
 * Source: Lenth, Algorithm AS 243, Applied Statistics 38 (1989) 185.
 * Check:  with shift 0 it is Student's t.
 */
export function noncentralTCdf(t: number, degrees: number, shift: number): number {
  if (t < 0) return 1 - noncentralTCdf(-t, degrees, -shift);
  const below = normalCdf(-shift);
  if (t === 0) return below;
  const x = (t * t) / (t * t + degrees);
  const lambda = shift * shift;
  const b = degrees / 2;
  let p = 0.5 * Math.exp(-lambda / 2);
  let q = Math.sqrt(2 / Math.PI) * p * shift;
  let s = 0.5 - p;
  let a = 0.5;
  let xOdd = incompleteBeta(x, a, b);
  let godd = Math.exp(a * Math.log(x) + b * Math.log1p(-x) + lnGamma(a + b) - lnGamma(a + 1) - lnGamma(b));
  let xEven = 1 - (1 - x) ** b;
  let geven = b * x * (1 - x) ** b;
  let sum = p * xOdd + q * xEven;
  for (let n = 1; n < 2000; n++) {
    a += 1;
    xOdd -= godd;
    xEven -= geven;
    godd *= (x * (a + b - 1)) / a;
    geven *= (x * (a + b - 0.5)) / (a + 0.5);
    p *= lambda / (2 * n);
    q *= lambda / (2 * n + 1);
    s -= p;
    sum += p * xOdd + q * xEven;
    if (Math.abs(2 * s * (xOdd - godd)) < 1e-14) break;
  }
  return Math.min(1, sum + below);
}
