import { describe, expect, it } from 'vitest';
import { median } from '../../../../core/log/index.ts';
import { samplesOf } from '../../../../core/power/gather.ts';
import type { Samples } from '../../../../core/power/smoothing/local-polynomial.ts';
import { slopeEstimator } from '../../../../core/power/smoothing/slope-estimate.ts';
import { plainSlope } from '../../../support/plain-slope.ts';
import { normal, seeded } from '../../../support/random.ts';

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
  ['even', samples(1, 91, 6, 0)],
  ['uneven', samples(2, 150, 7, 0.9)],
  ['a short pull', samples(9, 31, 1.9, 0)],
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
  // A little past both ends too.
  const times = Float64Array.from({ length: 31 }, (__, i) => first + span * ((1.02 * i) / 30 - 0.01));
  const fast = slopeEstimator(given);
  const plain = plainSlope(given);

  it('agrees with its plain twin in value, slope and errors', () => {
    const found = fast.withErrors(times);
    times.forEach((t, i) => {
      const point = plain(t);
      for (const key of ['value', 'slope', 'valueVariance', 'slopeVariance'] as const)
        expect(Math.abs((found[key][i] as number) / point[key] - 1)).toBeLessThan(2e-5);
      const most = Math.sqrt(point.valueVariance * point.slopeVariance);
      expect(Math.abs((found.covariance[i] as number) - point.covariance)).toBeLessThan(2e-5 * most);
    });
    expect(fast.along(times).slope).toEqual(found.slope);
  });
});

describe('how much a signal may bend', () => {
  /** A kink from 2 to 5 m/s^2 after 3 of 6 s. */
  const kinked = (seed: number, noise: number): Samples => {
    const gauss = normal(seeded(seed));
    const time = Float64Array.from({ length: 120 }, (_, i) => i / 20);
    const value = time.map((t) => 10 + 2 * t + 3 * Math.max(0, t - 3) + noise * gauss());
    return { time, value, weight: new Float64Array(120).fill(1 / noise ** 2) };
  };

  it('is found out place by place: a kink is followed, the straight parts stay straight', () => {
    const at = Float64Array.of(1, 1.5, 2, 2.7, 3.3, 4, 4.5, 5);
    const real = [2, 2, 2, 2, 5, 5, 5, 5];
    const squares = at.map(() => 0);
    const rounds = 20;
    for (let seed = 1; seed <= rounds; seed++) {
      const { slope } = slopeEstimator(kinked(seed, 0.02)).along(at);
      slope.forEach((s, i) => {
        squares[i] = (squares[i] as number) + (s - (real[i] as number)) ** 2 / rounds;
      });
    }
    const rms = squares.map(Math.sqrt);
    for (const i of [0, 1, 2, 5, 6, 7]) expect(rms[i] as number).toBeLessThan(0.06);
    for (const i of [3, 4]) expect(rms[i] as number).toBeLessThan(0.25);
  });

  it('is known in the errors: larger at the kink than on the straight', () => {
    const { slopeVariance } = slopeEstimator(kinked(1, 0.02)).withErrors(Float64Array.of(1.5, 3, 4.5));
    expect(slopeVariance[1] as number).toBeGreaterThan(2 * (slopeVariance[0] as number));
    expect(slopeVariance[1] as number).toBeGreaterThan(2 * (slopeVariance[2] as number));
  });

  it('is nothing in a straight rise, whatever its noise and however many its samples', () => {
    for (const count of [20, 100, 2000]) {
      const gauss = normal(seeded(count));
      const time = Float64Array.from({ length: count }, (_, i) => (6 * i) / count);
      const value = time.map((t) => 12 + 3 * t + 0.05 * gauss());
      const weight = new Float64Array(count).fill(1 / 0.05 ** 2);
      const { slope } = slopeEstimator({ time, value, weight }).along(Float64Array.of(1, 2, 3, 4, 5));
      for (const s of slope) expect(Math.abs(s - 3)).toBeLessThan(0.4 / Math.sqrt(count));
    }
  });

  it('tells how wide it looks: wider where there is more noise', () => {
    const quiet = slopeEstimator(samples(6, 97, 5.8, 0)).fullWidth();
    const given = samples(6, 97, 5.8, 0);
    const gauss = normal(seeded(5));
    const loud = slopeEstimator({
      ...given,
      value: given.value.map((v) => v + 0.3 * gauss()),
      weight: given.weight.map(() => 1 / 0.3 ** 2),
    }).fullWidth();
    expect(quiet).toBeGreaterThan(0.2);
    expect(loud).toBeGreaterThan(1.5 * quiet);
    expect(loud).toBeLessThan(6);
  });
});

describe('samples that run ahead', () => {
  it('give value and slope of what they run ahead of, at the ends too', () => {
    const time = Float64Array.from({ length: 80 }, (_, i) => i / 20);
    const speed = (t: number) => 25 + 4 * t - 0.3 * t * t;
    const rise = (t: number) => 4 - 0.6 * t;
    const lead = time.map((t) => 0.1 + 0.03 * t);
    const value = time.map((t, i) => speed(t) + (lead[i] as number) * rise(t));
    const weight = new Float64Array(time.length).fill(1e4);
    const at = Float64Array.of(0.1, 1.3, 2.6, 3.9);
    const curve = slopeEstimator({ time, value, weight, lead }).along(at);
    at.forEach((t, i) => {
      expect(curve.value[i]).toBeCloseTo(speed(t), 2);
      expect(Math.abs((curve.slope[i] as number) - rise(t))).toBeLessThan(0.03);
    });
  });
});

describe('samples of two signals', () => {
  it('keep their weights', () => {
    const few = Float64Array.of(0, 1, 2, 3, 4, 5, 6, 7);
    const one = { time: few, value: few, step: 0, hold: 0, outliers: 0, noise: 1 };
    const two = { ...one, time: few.map((t) => t + 0.5), noise: 0.5 };
    const all = samplesOf([one, two]);
    expect([...all.time]).toEqual([...few, ...few.map((t) => t + 0.5)]);
    expect([...all.weight]).toEqual([...Array(16).keys()].map((i) => (i < 8 ? 1 : 4)));
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
