import { evenEstimator } from './even-estimator.ts';
import { evenOf } from './even-slope.ts';
import { lineRows, parabolaRows, type Samples, tricube, windowAround } from './local-polynomial.ts';
import { widthOfKernel } from './slope-kernel.ts';
import { chooseSmoothers, type Effort, type Smoother } from './smoother-choice.ts';

/** Value and slope of a noisy signal at several instants, with their errors and how strongly they go together. */
export type SlopeCurve = {
  readonly value: Float64Array;
  readonly slope: Float64Array;
};
export type SlopeErrors = {
  readonly valueVariance: Float64Array;
  readonly slopeVariance: Float64Array;
  readonly covariance: Float64Array;
};

export type SlopeEstimator = {
  /** At the instants given. */
  readonly along: (times: Float64Array) => SlopeCurve;
  /** The same with errors, at twice the cost. */
  readonly withErrors: (times: Float64Array) => SlopeCurve & SlopeErrors;
  /** Narrowest half width that has a share [s]: nothing changes much within a fraction of it. */
  readonly narrowest: number;
  /** Full width at half height of the kernel that the true slope is seen through [s]. */
  readonly fullWidth: number;
};

/**
 * Slope of a signal by local polynomials of degree 1 and 2 whose bandwidth the data choose (smoother-choice.ts).
 *
 *   minimise sum K((t_i - t) / h) w_i (y_i - sum b_k (t_i - t)^k)^2;  value b_0, slope b_1, K the tricube
 *
 * @param samples   weights are 1 / variance, in the signal's own unit
 * @param effort    how closely the bandwidth is looked for in dense samples; few are always looked at closely
 * @returns         estimator; its errors hold the noise alone
 *
 * Valid:  eight samples at five instants or more.
 * Source: as local-polynomial and smoother-choice. Its plain twin is tests/support/plain-slope.ts.
 */
export function slopeEstimator(samples: Samples, effort: Effort = 'fine'): SlopeEstimator {
  const { time } = samples;
  const even = evenOf(samples);
  if (even) return evenEstimator(even, time, effort);
  const smoothers = chooseSmoothers(samples);
  const middle = ((time[0] as number) + (time.at(-1) as number)) / 2;
  return {
    along: (times) => valuesAlong(samples, smoothers, times),
    withErrors: (times) => errorsAlong(samples, smoothers, times),
    narrowest: smoothers[0]?.halfWidth as number,
    fullWidth: fullWidthAt(samples, smoothers, middle),
  };
}

/** Coefficients of 1, u, u^2 by which kernel times weight is multiplied, for the value and for the slope. */
type Mixed = [v0: number, v1: number, v2: number, b0: number, b1: number, b2: number];

/** Sums of weights times u^k of the window at hand. */
const sums = new Float64Array(5);
const mixed: Mixed = [0, 0, 0, 0, 0, 0];

function setSums(s0: number, s1: number, s2: number, s3: number, s4: number): void {
  sums[0] = s0;
  sums[1] = s1;
  sums[2] = s2;
  sums[3] = s3;
  sums[4] = s4;
}

/** Line and parabola of one window, each by its share, into `mixed`. */
function mixRows({ line, parabola }: Smoother): void {
  const [s0, s1, s2, s3, s4] = sums as unknown as [number, number, number, number, number];
  const one = lineRows(s0, s1, s2);
  const two = parabola > 0 ? (parabolaRows(s0, s1, s2, s3, s4) ?? one) : one;
  for (let k = 0; k < 3; k++) {
    mixed[k] = line * (one.value[k] as number) + parabola * (two.value[k] as number);
    mixed[k + 3] = line * (one.slope[k] as number) + parabola * (two.slope[k] as number);
  }
}

/** Values and slopes from the sums of each window alone: no weight of any sample is needed. */
function valuesAlong(samples: Samples, smoothers: readonly Smoother[], times: Float64Array): SlopeCurve {
  const { time, value: y, weight } = samples;
  const value = new Float64Array(times.length);
  const slope = new Float64Array(times.length);
  for (const smoother of smoothers) {
    for (let k = 0; k < times.length; k++) {
      const at = times[k] as number;
      const { from, to, h } = windowAround(time, at, smoother.halfWidth, 4);
      let s0 = 0;
      let s1 = 0;
      let s2 = 0;
      let s3 = 0;
      let s4 = 0;
      let y0 = 0;
      let y1 = 0;
      let y2 = 0;
      for (let i = from; i < to; i++) {
        const u = ((time[i] as number) - at) / h;
        const p = (weight[i] as number) * tricube(u);
        const pu = p * u;
        const p2 = pu * u;
        const v = y[i] as number;
        s0 += p;
        s1 += pu;
        s2 += p2;
        s3 += p2 * u;
        s4 += p2 * u * u;
        y0 += p * v;
        y1 += pu * v;
        y2 += p2 * v;
      }
      setSums(s0, s1, s2, s3, s4);
      mixRows(smoother);
      value[k] = (value[k] as number) + mixed[0] * y0 + mixed[1] * y1 + mixed[2] * y2;
      slope[k] = (slope[k] as number) + (mixed[3] * y0 + mixed[4] * y1 + mixed[5] * y2) / h;
    }
  }
  return { value, slope };
}

/** Weights of the mean of all smoothers at one instant, for the value and for the slope; kept between calls. */
let valueWeights = new Float64Array(0);
let slopeWeights = new Float64Array(0);
/** Kernel times weight of the window at hand. */
let kernel = new Float64Array(0);

/** Fills the weights of the mean of all smoothers at an instant; returns the samples that they cover. */
function weightsAt(samples: Samples, smoothers: readonly Smoother[], at: number): [from: number, to: number] {
  const { time, weight } = samples;
  if (valueWeights.length < time.length) {
    valueWeights = new Float64Array(time.length);
    slopeWeights = new Float64Array(time.length);
    kernel = new Float64Array(time.length);
  }
  let first = time.length;
  let last = 0;
  for (const smoother of smoothers) {
    const { from, to, h } = windowAround(time, at, smoother.halfWidth, 4);
    // Windows grow with the half width: what is new has no weight yet.
    if (first > last) {
      first = from;
      last = from;
    }
    for (; first > from; first--) {
      valueWeights[first - 1] = 0;
      slopeWeights[first - 1] = 0;
    }
    for (; last < to; last++) {
      valueWeights[last] = 0;
      slopeWeights[last] = 0;
    }
    let s0 = 0;
    let s1 = 0;
    let s2 = 0;
    let s3 = 0;
    let s4 = 0;
    for (let i = from; i < to; i++) {
      const u = ((time[i] as number) - at) / h;
      const p = (weight[i] as number) * tricube(u);
      const p2 = p * u * u;
      kernel[i] = p;
      s0 += p;
      s1 += p * u;
      s2 += p2;
      s3 += p2 * u;
      s4 += p2 * u * u;
    }
    setSums(s0, s1, s2, s3, s4);
    mixRows(smoother);
    const [v0, v1, v2, b0, b1, b2] = mixed;
    for (let i = from; i < to; i++) {
      const u = ((time[i] as number) - at) / h;
      const p = kernel[i] as number;
      valueWeights[i] = (valueWeights[i] as number) + p * (v0 + u * (v1 + u * v2));
      slopeWeights[i] = (slopeWeights[i] as number) + (p * (b0 + u * (b1 + u * b2))) / h;
    }
  }
  return [first, last];
}

function errorsAlong(samples: Samples, smoothers: readonly Smoother[], times: Float64Array) {
  const n = times.length;
  const curve = {
    value: new Float64Array(n),
    slope: new Float64Array(n),
    valueVariance: new Float64Array(n),
    slopeVariance: new Float64Array(n),
    covariance: new Float64Array(n),
  };
  const { value: y, weight } = samples;
  for (let k = 0; k < n; k++) {
    const [from, to] = weightsAt(samples, smoothers, times[k] as number);
    let value = 0;
    let slope = 0;
    let valueVariance = 0;
    let slopeVariance = 0;
    let covariance = 0;
    for (let i = from; i < to; i++) {
      const a = valueWeights[i] as number;
      const b = slopeWeights[i] as number;
      const w = weight[i] as number;
      value += a * (y[i] as number);
      slope += b * (y[i] as number);
      valueVariance += (a * a) / w;
      slopeVariance += (b * b) / w;
      covariance += (a * b) / w;
    }
    curve.value[k] = value;
    curve.slope[k] = slope;
    curve.valueVariance[k] = valueVariance;
    curve.slopeVariance[k] = slopeVariance;
    curve.covariance[k] = covariance;
  }
  return curve;
}

function fullWidthAt(samples: Samples, smoothers: readonly Smoother[], at: number): number {
  const [from, to] = weightsAt(samples, smoothers, at);
  return widthOfKernel(slopeWeights.subarray(from, to), samples.time.subarray(from, to));
}
