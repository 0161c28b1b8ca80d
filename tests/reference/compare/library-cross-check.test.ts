import jStat from 'jstat';
import * as simple from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import {
  chiSquareCdf,
  fCdf,
  median,
  normalCdf,
  tCdf,
  tQuantile,
  variance,
} from '../../../core/compare/statistics/index.ts';

/** Two general statistics libraries from the registry, of other authors, as a second opinion. */
// The library stops its continued fraction at 3e-7; the Welch example holds ours to twelve digits.
const digits = 6;

describe('distributions agree with a general library (jstat 1.9.6)', () => {
  const places = [-4.2, -1.3, -0.2, 0.4, 1.1, 2.7, 6];
  it.each([1, 2, 3.7, 8, 24.99, 200])('t with %d degrees', (degrees) => {
    for (const x of places) expect(tCdf(x, degrees)).toBeCloseTo(jStat.studentt.cdf(x, degrees), digits);
    for (const p of [0.01, 0.3, 0.975]) {
      expect(tCdf(tQuantile(p, degrees), degrees)).toBeCloseTo(p, 12);
    }
  });

  it.each([
    [1, 4],
    [2, 12],
    [5.5, 9],
  ] as const)('F with %d and %d degrees', (top, bottom) => {
    for (const x of [0.1, 0.9, 2.5, 8]) {
      expect(fCdf(x, [top, bottom])).toBeCloseTo(jStat.centralF.cdf(x, top, bottom), digits);
    }
  });

  it('chi-square and normal', () => {
    for (const x of [0.3, 2, 7, 20])
      expect(chiSquareCdf(x, 5)).toBeCloseTo(jStat.chisquare.cdf(x, 5), digits);
    for (const x of places) expect(normalCdf(x)).toBeCloseTo(jStat.normal.cdf(x, 0, 1), digits);
  });
});

it('medians and variances agree with another (simple-statistics 7.12.1)', () => {
  for (const values of [
    [4, 1, 9],
    [2.5, 7, 1, 1],
    [3, 3.5],
  ]) {
    expect(median(values)).toBe(simple.median(values));
    expect(variance(values)).toBeCloseTo(simple.sampleVariance(values), 12);
  }
});
