import { describe, expect, it } from 'vitest';
import { median } from '../../../core/log/index.ts';
import { samplesOf } from '../../../core/power/gather.ts';
import type { Samples } from '../../../core/power/local-polynomial.ts';
import { slopeEstimator } from '../../../core/power/slope-estimate.ts';
import { plainSlope } from '../../support/plain-slope.ts';
import { normal, seeded } from '../../support/random.ts';

/** A speed that climbs as boost comes in, sampled at uneven times with uneven trust. */
function samples(seed: number, count: number, seconds: number, jitter: number): Samples {
  const uniform = seeded(seed);
  const gauss = normal(uniform);
  const step = seconds / count;
  const time = Float64Array.from({ length: count }, (_, i) => (i + jitter * uniform()) * step);
  const deviation = time.map(() => 0.02 + 0.1 * jitter * uniform());
  const value = time.map((t, i) => {
    const boost = 1.5 * Math.log(1 + Math.exp((t - 2) / 0.3));
    return 20 + 1.5 * t + boost + (deviation[i] as number) * gauss();
  });
  return { time, value, weight: deviation.map((d) => 1 / d ** 2) };
}

const cases = [
  ['uneven', samples(2, 150, 7, 0.9)],
  ['few', samples(3, 12, 4, 0.5)],
  ['two at each instant', twice(samples(4, 60, 5, 0.3))],
  ['without noise', { ...samples(5, 80, 5, 0.2), value: samples(5, 80, 5, 0.2).time.map((t) => 15 + 3 * t) }],
] as const;

function twice({ time, value, weight }: Samples): Samples {
  const both = (xs: Float64Array, other: (x: number) => number) =>
    Float64Array.from({ length: 2 * xs.length }, (_, i) =>
      i % 2 === 0 ? (xs[i >> 1] as number) : other(xs[i >> 1] as number),
    );
  return {
    time: both(time, (t) => t),
    value: both(value, (v) => v + 0.01),
    weight: both(weight, (w) => w / 3),
  };
}

describe.each(cases)('the slope of a signal, %s', (_, given) => {
  const first = given.time[0] as number;
  const span = (given.time.at(-1) as number) - first;
  const times = Float64Array.from({ length: 31 }, (__, i) => first + (span * i) / 30);
  const fast = slopeEstimator(given);
  const plain = plainSlope(given);

  it('agrees with its plain twin in value, slope, errors and width', () => {
    const found = fast.withErrors(times);
    const quick = fast.along(times);
    times.forEach((t, i) => {
      const point = plain.at(t);
      for (const key of ['value', 'slope', 'valueVariance', 'slopeVariance'] as const)
        expect(Math.abs((found[key][i] as number) / point[key] - 1)).toBeLessThan(1e-7);
      const most = Math.sqrt(point.valueVariance * point.slopeVariance);
      expect(Math.abs((found.covariance[i] as number) - point.covariance)).toBeLessThan(1e-7 * most);
      expect(Math.abs((quick.value[i] as number) / point.value - 1)).toBeLessThan(1e-7);
      expect(Math.abs((quick.slope[i] as number) / point.slope - 1)).toBeLessThan(1e-7);
    });
    expect(fast.fullWidth).toBeCloseTo(plain.fullWidth, 9);
  });
});

describe.each([
  ['a dense log, gathered', samples(6, 97, 5.8, 0)],
  ['few to the second', samples(7, 61, 5, 0)],
  ['ends that weigh less', lighterEnds(samples(8, 85, 6, 0))],
  ['a short pull', samples(9, 31, 1.9, 0)],
  ['even and equal', samples(1, 91, 6, 0)],
] as const)('the slope of even samples, %s', (_, given) => {
  it('agrees with its plain twin at each sample', () => {
    // Every sixth sample is worked out whatever the stride.
    const times = given.time.filter((__, i) => i % 6 === 0);
    const found = slopeEstimator(given).withErrors(times);
    const plain = plainSlope(given, true);
    times.forEach((t, i) => {
      const point = plain.at(t);
      for (const key of ['value', 'slope', 'valueVariance', 'slopeVariance'] as const)
        expect(Math.abs((found[key][i] as number) / point[key] - 1)).toBeLessThan(1e-7);
      const most = Math.sqrt(point.valueVariance * point.slopeVariance);
      expect(Math.abs((found.covariance[i] as number) - point.covariance)).toBeLessThan(1e-7 * most);
    });
  });

  it('strays between samples by less than a twentieth of its error', () => {
    const first = given.time[0] as number;
    const span = (given.time.at(-1) as number) - first;
    const times = Float64Array.from({ length: 50 }, (__, i) => first + (span * (i + 0.5)) / 50);
    const found = slopeEstimator(given).along(times);
    const plain = plainSlope(given, true);
    let squares = 0;
    times.forEach((t, i) => {
      const point = plain.at(t);
      squares += ((found.slope[i] as number) - point.slope) ** 2 / point.slopeVariance / times.length;
    });
    expect(Math.sqrt(squares)).toBeLessThan(0.05);
  });
});

function lighterEnds(all: Samples): Samples {
  const last = all.time.length - 1;
  return { ...all, weight: all.weight.map((w, i) => (i === 0 || i === last ? 0.6 * w : w)) };
}

describe('dense samples', () => {
  const time = Float64Array.from({ length: 600 }, (_, i) => i / 100);
  const signal = (value: Float64Array) => ({ time, value, step: 0, hold: 0, outliers: 0, noise: 0.1 });

  it('are gathered, a straight rise and what is known of it kept', () => {
    const all = samplesOf([signal(time.map((t) => 12 + 3 * t))]);
    expect(all.time.length).toBeLessThan(110);
    expect(all.weight.reduce((a, b) => a + b, 0)).toBeCloseTo(600 / 0.1 ** 2, 3);
    for (let i = 0; i < all.time.length; i++)
      expect(all.value[i]).toBeCloseTo(12 + 3 * (all.time[i] as number), 9);
  });

  it('tell the slope as one by one', () => {
    const gauss = normal(seeded(9));
    const value = time.map((t) => 20 + 2 * t + Math.log(1 + Math.exp((t - 3) / 0.25)) + 0.1 * gauss());
    const weight = new Float64Array(600).fill(1 / 0.1 ** 2);
    const plain = plainSlope({ time, value, weight });
    const at = Float64Array.from({ length: 29 }, (_, i) => 0.2 + i * 0.2);
    const found = slopeEstimator(samplesOf([signal(value)])).withErrors(at);
    let squares = 0;
    at.forEach((t, i) => {
      const point = plain.at(t);
      squares += ((found.slope[i] as number) - point.slope) ** 2 / point.slopeVariance / at.length;
      // The choice of widths moves a little too, and with it the error.
      expect(Math.abs(Math.sqrt((found.slopeVariance[i] as number) / point.slopeVariance) - 1)).toBeLessThan(
        0.15,
      );
    });
    // A quarter of the error that noise leaves anyway adds 3 % to it.
    expect(Math.sqrt(squares)).toBeLessThan(0.25);
  });

  it('of two signals keep their order and their weights', () => {
    const few = Float64Array.of(0, 1, 2, 3, 4, 5, 6, 7);
    const one = { time: few, value: few, step: 0, hold: 0, outliers: 0, noise: 1 };
    const two = { ...one, time: few.map((t) => t + 0.5), noise: 0.5 };
    const all = samplesOf([one, two]);
    expect([...all.time]).toEqual([...Array(16).keys()].map((i) => i / 2));
    expect([...all.weight]).toEqual([...Array(16).keys()].map((i) => (i % 2 === 0 ? 1 : 4)));
  });
});

describe('a median', () => {
  it.each([1, 2, 3, 4, 7, 100, 101])('of %i numbers is the middle of them sorted', (n) => {
    const uniform = seeded(n);
    for (let round = 0; round < 30; round++) {
      const values = Float64Array.from({ length: n }, () => Math.floor(10 * uniform()));
      const sorted = [...values].sort((a, b) => a - b);
      const low = sorted[(n - 1) >> 1] as number;
      expect(median(values)).toBe((low + (sorted[n >> 1] as number)) / 2);
    }
  });

  it('of none is none, and gaps count as largest', () => {
    expect(median(new Float64Array(0))).toBeNaN();
    expect(median(Float64Array.of(Number.NaN, 3, 1, Number.NaN, 2))).toBe(3);
  });
});
