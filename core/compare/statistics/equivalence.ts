import { tCdf } from './student-t.ts';
import type { MeanDifference } from './two-samples.ts';

export type Equivalence = {
  readonly tLow: number;
  readonly pLow: number;
  readonly tHigh: number;
  readonly pHigh: number;
  /** The larger of the two: both one-sided tests must reject. */
  readonly p: number;
};

/**
 * Two one-sided tests: is the true difference inside the bounds? Equal to asking whether the interval of
 * 1 - 2 alpha lies inside.
 *
 * Source: Schuirmann, J. Pharmacokinet. Biopharm. 15 (1987) 657; Wellek, Testing Statistical Hypotheses of
 *         Equivalence (2003).
 * Check:  Wellek's paired data, p. 212: p = 0.0031.
 */
export function equivalence(d: MeanDifference, bounds: readonly [number, number]): Equivalence {
  const tLow = (d.difference - bounds[0]) / d.standardError;
  const tHigh = (d.difference - bounds[1]) / d.standardError;
  const pLow = 1 - tCdf(tLow, d.degrees);
  const pHigh = tCdf(tHigh, d.degrees);
  return { tLow, pLow, tHigh, pHigh, p: Math.max(pLow, pHigh) };
}
