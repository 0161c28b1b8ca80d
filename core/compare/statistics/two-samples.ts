import { satterthwaite } from './satterthwaite.ts';
import { tQuantile, tTwoSided } from './student-t.ts';
import { mean, squaresAboutMean, variance } from './summary.ts';

/** A difference of means with all that a t test needs of it. */
export type MeanDifference = {
  /** Second sample minus first. */
  readonly difference: number;
  readonly standardError: number;
  readonly degrees: number;
};

/** t and two-sided p of "no difference". */
export function tTest(d: MeanDifference): { readonly t: number; readonly p: number } {
  const t = d.difference / d.standardError;
  return { t, p: tTwoSided(t, d.degrees) };
}

/** Interval that holds the true difference with the given confidence. */
export function interval(d: MeanDifference, confidence = 0.95): readonly [number, number] {
  const half = tQuantile((1 + confidence) / 2, d.degrees) * d.standardError;
  return [d.difference - half, d.difference + half];
}

/**
 * Two samples with variances of their own, by Welch's approximation.
 *
 * Valid:  two values or more in each.
 * Source: Welch, Biometrika 34 (1947) 28.
 * Check:  published example with 15 and 15 values: t = 2.4554, 24.989 degrees, p = 0.02138.
 */
export function welch(first: ArrayLike<number>, second: ArrayLike<number>): MeanDifference {
  const sum = satterthwaite([
    { variance: variance(first) / first.length, degrees: first.length - 1 },
    { variance: variance(second) / second.length, degrees: second.length - 1 },
  ]);
  return {
    difference: mean(second) - mean(first),
    standardError: Math.sqrt(sum.variance),
    degrees: sum.degrees,
  };
}

/** Two samples with one variance between them (Student). */
export function student(first: ArrayLike<number>, second: ArrayLike<number>): MeanDifference {
  const degrees = first.length + second.length - 2;
  const pooled = (squaresAboutMean(first) + squaresAboutMean(second)) / degrees;
  return {
    difference: mean(second) - mean(first),
    standardError: Math.sqrt(pooled * (1 / first.length + 1 / second.length)),
    degrees,
  };
}
