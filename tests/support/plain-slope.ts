import type { Samples } from '../../core/power/local-polynomial.ts';

/*
 * The plain twin of core/power/slope-estimate.ts: each fit as weights over its samples, nothing shared or kept.
 * Slow, and the measure of the fast one.
 */

type LocalFit = {
  readonly from: number;
  readonly valueWeights: Float64Array;
  readonly slopeWeights: Float64Array;
};

/** Value and slope of a noisy signal at an instant, with their errors and how strongly they go together. */
type SlopePoint = {
  readonly value: number;
  readonly slope: number;
  readonly valueVariance: number;
  readonly slopeVariance: number;
  readonly covariance: number;
};

type SlopeEstimator = {
  readonly at: (time: number) => SlopePoint;
  /** Full width at half height of the kernel that the true slope is seen through [s]. */
  readonly fullWidth: number;
};

/** One half width, and the shares of its line and its parabola in the mean. */
type Smoother = { readonly halfWidth: number; readonly line: number; readonly parabola: number };

/** Instants at which smoothers are compared. */
const latticeSize = 24;

/**
 * Slope of a signal by local polynomials of degree 1 and 2 whose bandwidth the data choose.
 *
 * Each smoother (degree, half width) is compared with every noisier one on a lattice of instants. What they
 * differ by beyond noise is the bias of the smoother one; bias plus variance is its risk (Goldenshluger and
 * Lepski's rule, with its two constants at 2). The estimate is the mean of all smoothers, weighted by
 * exp(-(risk - least) / (0.3 least)): a sharp choice would jump between neighbours that are equally good. One set
 * of shares serves the whole signal: chosen instant by instant they follow noise, and the error grows (tried).
 *
 * @param samples   weights are 1 / variance, in the signal's own unit
 * @returns         estimator; its errors hold the noise alone
 *
 * @param isEven    compare at samples, the nearest to the even lattice, in pairs as seen from the two ends
 *
 * Valid:  eight samples at five instants or more.
 * Source: Goldenshluger and Lepski, Annals of Statistics 39 (2011) 1608 (from memory); constants tuned on
 *         generated drives (tests/bench/power-accuracy.bench.ts).
 */
export function plainSlope(samples: Samples, isEven = false): SlopeEstimator {
  const { time } = samples;
  const first = time[0] as number;
  const last = time.at(-1) as number;
  const end = time.length - 1;
  const fromEnd = (i: number) => Math.round((end * (i + 0.5)) / latticeSize);
  const nearest = (i: number) => time[i < latticeSize / 2 ? fromEnd(i) : end - fromEnd(latticeSize - 1 - i)];
  const lattice = Float64Array.from({ length: latticeSize }, (_, i) =>
    isEven ? (nearest(i) as number) : first + ((last - first) * (i + 0.5)) / latticeSize,
  );
  const widths = halfWidths(time);
  // Line and parabola of each width in turn.
  const fits = widths.flatMap((h) => {
    const windows = Array.from(lattice, (t) => ({ t, local: localWindow(samples, t, h, 2) }));
    return [1, 2].map((degree) =>
      windows.map(({ t, local }) => fitFrom(samples, t, local, rowsOf(local.moments, degree))),
    );
  });
  const risks = risksOf(samples, fits);
  const least = Math.min(...risks);
  const worths = risks.map((r) => {
    const worth = least > 0 ? Math.exp(-(r - least) / (0.3 * least)) : Number(r === least);
    // What is worth less than a fiftieth costs time and changes nothing.
    return worth > 0.02 ? worth : 0;
  });
  const total = worths.reduce((a, b) => a + b, 0);
  const smoothers = widths
    .map((halfWidth, i) => ({
      halfWidth,
      line: (worths[2 * i] as number) / total,
      parabola: (worths[2 * i + 1] as number) / total,
    }))
    .filter((s) => s.line + s.parabola > 0);
  return {
    at: (t) => pointOf(samples, mixedFit(samples, t, smoothers)),
    fullWidth: fullWidthOf(
      samples,
      mixedFit(samples, isEven ? (time[end >> 1] as number) : (first + last) / 2, smoothers),
    ),
  };
}

/** Half widths that are tried [s]: a third more each time, from what four instants need to half the signal. */
function halfWidths(time: Float64Array): number[] {
  const instants = new Set(time).size;
  const span = (time.at(-1) as number) - (time[0] as number);
  const widths: number[] = [];
  const least = Math.max(0.18, (2.2 * span) / (instants - 1));
  for (let h = least; h < Math.max(least * 1.01, Math.min(2.6, span / 1.6)); h *= 1.34) widths.push(h);
  return widths;
}

function risksOf(samples: Samples, fits: readonly (readonly LocalFit[])[]): number[] {
  const slopes = fits.map((row) => row.map((f) => weightedSum(f.slopeWeights, samples.value, f.from)));
  const variances = fits.map((row) => row.map((f) => covarianceOf(samples, f, f)));
  const means = variances.map((row) => row.reduce((a, b) => a + b, 0) / row.length);
  return fits.map((row, k) => {
    let bias = 0;
    for (let j = 0; j < fits.length; j++) {
      // A hundred times noisier shows no bias that one ten times noisier doesn't.
      const louder = (means[j] as number) / (means[k] as number);
      if (!(louder > 1 && louder < 100)) continue;
      let excess = 0;
      for (let i = 0; i < row.length; i++) {
        const difference = (slopes[j]?.[i] as number) - (slopes[k]?.[i] as number);
        const shared = covarianceOf(samples, row[i] as LocalFit, fits[j]?.[i] as LocalFit);
        const noise = (variances[j]?.[i] as number) + (variances[k]?.[i] as number) - 2 * shared;
        excess += difference * difference - 2 * noise;
      }
      bias = Math.max(bias, excess / row.length);
    }
    return bias + 2 * (means[k] as number);
  });
}

/** The mean of all smoothers at one instant, as one fit. */
function mixedFit(samples: Samples, t: number, smoothers: readonly Smoother[]): LocalFit {
  const fits = smoothers.map((s) => {
    const local = localWindow(samples, t, s.halfWidth, 2);
    return fitFrom(samples, t, local, mixedRows(local.moments, s));
  });
  const from = Math.min(...fits.map((f) => f.from));
  const to = Math.max(...fits.map((f) => f.from + f.valueWeights.length));
  const valueWeights = new Float64Array(to - from);
  const slopeWeights = new Float64Array(to - from);
  for (const f of fits) {
    for (let i = 0; i < f.valueWeights.length; i++) {
      const at = i + f.from - from;
      valueWeights[at] = (valueWeights[at] as number) + (f.valueWeights[i] as number);
      slopeWeights[at] = (slopeWeights[at] as number) + (f.slopeWeights[i] as number);
    }
  }
  return { from, valueWeights, slopeWeights };
}

/** Line and parabola of one window, each by its share. */
function mixedRows(moments: Float64Array, { line, parabola }: Smoother): Rows {
  const one = rowsOf(moments, 1);
  const two = rowsOf(moments, 2);
  const mixed = (a: readonly number[], b: readonly number[]) =>
    [0, 1, 2].map((k) => line * (a[k] ?? 0) + parabola * (b[k] ?? 0));
  return { value: mixed(one.value, two.value), slope: mixed(one.slope, two.slope) };
}

function pointOf(samples: Samples, fit: LocalFit): SlopePoint {
  let valueVariance = 0;
  let slopeVariance = 0;
  let covariance = 0;
  for (let i = 0; i < fit.valueWeights.length; i++) {
    const variance = 1 / (samples.weight[fit.from + i] as number);
    const a = fit.valueWeights[i] as number;
    const b = fit.slopeWeights[i] as number;
    valueVariance += a * a * variance;
    slopeVariance += b * b * variance;
    covariance += a * b * variance;
  }
  return {
    value: weightedSum(fit.valueWeights, samples.value, fit.from),
    slope: weightedSum(fit.slopeWeights, samples.value, fit.from),
    valueVariance,
    slopeVariance,
    covariance,
  };
}

/** Covariance of two slopes under the samples' own noise. */
function covarianceOf(samples: Samples, a: LocalFit, b: LocalFit): number {
  const from = Math.max(a.from, b.from);
  const to = Math.min(a.from + a.slopeWeights.length, b.from + b.slopeWeights.length);
  const { weight } = samples;
  let sum = 0;
  for (let i = from; i < to; i++)
    sum +=
      ((a.slopeWeights[i - a.from] as number) * (b.slopeWeights[i - b.from] as number)) /
      (weight[i] as number);
  return sum;
}

/**
 * The slope weights, summed from the left, are the kernel through which the true slope is seen (summation by
 * parts); its full width at half its greatest height.
 */
function fullWidthOf(samples: Samples, fit: LocalFit): number {
  const n = fit.slopeWeights.length;
  const kernel = new Float64Array(n);
  let sum = 0;
  let peak = 0;
  for (let i = 0; i < n; i++) {
    sum -= fit.slopeWeights[i] as number;
    kernel[i] = sum;
    peak = Math.max(peak, sum);
  }
  const time = (i: number) => samples.time[fit.from + i] as number;
  let left = 0;
  while (left < n - 1 && (kernel[left] as number) < peak / 2) left++;
  let right = n - 1;
  while (right > left && (kernel[right] as number) < peak / 2) right--;
  return time(Math.min(n - 1, right + 1)) - time(left);
}

/** What all fits around one instant with one half width share. */
type LocalWindow = {
  readonly from: number;
  /** Half width in use [s]. */
  readonly h: number;
  /** Kernel times sample weight. */
  readonly weights: Float64Array;
  /** Sums of weights times ((t_i - t) / h)^k, k from 0 to 2 * degree. */
  readonly moments: Float64Array;
};

/** @param degree  highest that will be fitted */
function localWindow(samples: Samples, at: number, halfWidth: number, degree: number): LocalWindow {
  const { time, weight } = samples;
  const { from, to, h } = windowAround(time, at, halfWidth, degree + 2);
  const weights = new Float64Array(to - from);
  const moments = new Float64Array(2 * degree + 1);
  for (let i = from; i < to; i++) {
    const u = ((time[i] as number) - at) / h;
    let p = (weight[i] as number) * tricube(u);
    weights[i - from] = p;
    for (let k = 0; k < moments.length; k++) {
      moments[k] = (moments[k] as number) + p;
      p *= u;
    }
  }
  return { from, h, weights, moments };
}

/** Coefficients of the polynomials in u by which the weights are multiplied, for the value and for the slope. */
type Rows = { readonly value: readonly number[]; readonly slope: readonly number[] };

/** First two rows of the inverse of the moment matrix; of the next lower degree where it can't be inverted. */
function rowsOf(moments: Float64Array, degree: number): Rows {
  const rows = degree === 1 ? lineRows(moments) : parabolaRows(moments);
  if (rows) return rows;
  if (degree > 1) return rowsOf(moments, degree - 1);
  throw new Error('a local fit needs two distinct instants');
}

/** The weights of a fit from its window and its rows. */
function fitFrom(samples: Samples, at: number, local: LocalWindow, rows: Rows): LocalFit {
  const { from, h, weights } = local;
  const valueWeights = new Float64Array(weights.length);
  const slopeWeights = new Float64Array(weights.length);
  const { value, slope } = rows;
  const top = value.length - 1;
  for (let i = 0; i < weights.length; i++) {
    const u = ((samples.time[from + i] as number) - at) / h;
    let a = 0;
    let b = 0;
    for (let k = top; k >= 0; k--) {
      a = a * u + (value[k] as number);
      b = b * u + (slope[k] as number);
    }
    valueWeights[i] = (weights[i] as number) * a;
    slopeWeights[i] = ((weights[i] as number) * b) / h;
  }
  return { from, valueWeights, slopeWeights };
}

function lineRows(s: Float64Array): Rows | null {
  const s0 = s[0] as number;
  const s1 = s[1] as number;
  const s2 = s[2] as number;
  const d = s0 * s2 - s1 * s1;
  if (!(d > 1e-12 * s0 * s2)) return null;
  return { value: [s2 / d, -s1 / d], slope: [-s1 / d, s0 / d] };
}

function parabolaRows(s: Float64Array): Rows | null {
  const s0 = s[0] as number;
  const s1 = s[1] as number;
  const s2 = s[2] as number;
  const s3 = s[3] as number;
  const s4 = s[4] as number;
  const c00 = s2 * s4 - s3 * s3;
  const c01 = s2 * s3 - s1 * s4;
  const c02 = s1 * s3 - s2 * s2;
  const d = s0 * c00 + s1 * c01 + s2 * c02;
  if (!(d > 1e-12 * s0 * s2 * s4)) return null;
  const c11 = s0 * s4 - s2 * s2;
  const c12 = s1 * s2 - s0 * s3;
  return { value: [c00 / d, c01 / d, c02 / d], slope: [c01 / d, c11 / d, c12 / d] };
}

/** Weights times the samples from `from` on. */
function weightedSum(weights: Float64Array, values: Float64Array, from: number): number {
  let sum = 0;
  for (let i = 0; i < weights.length; i++) sum += (weights[i] as number) * (values[from + i] as number);
  return sum;
}

/** Samples within the half width, widened until so many distinct instants lie inside. */
function windowAround(time: Float64Array, at: number, halfWidth: number, needed: number) {
  const n = time.length;
  let from = lowerBound(time, at - halfWidth);
  let to = from;
  let h = halfWidth;
  while (to < n && (time[to] as number) <= at + halfWidth) to++;
  // Two channels read at one instant are one point to a polynomial.
  while (distinct(time, from, to) < needed && (from > 0 || to < n)) {
    const left = from > 0 ? at - (time[from - 1] as number) : Number.POSITIVE_INFINITY;
    const right = to < n ? (time[to] as number) - at : Number.POSITIVE_INFINITY;
    if (left <= right) from--;
    else to++;
    // A sample on the rim of the tricube weighs nothing: keep the newest just inside.
    h = Math.max(h, 1.05 * Math.min(left, right));
  }
  return { from, to, h };
}

/** First index whose time is not below t. */
function lowerBound(time: Float64Array, t: number): number {
  let low = 0;
  let high = time.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((time[middle] as number) < t) low = middle + 1;
    else high = middle;
  }
  return low;
}

function distinct(time: Float64Array, from: number, to: number): number {
  let count = to > from ? 1 : 0;
  for (let i = from + 1; i < to && count < 8; i++) if (time[i] !== time[i - 1]) count++;
  return count;
}

function tricube(u: number): number {
  const a = Math.abs(u);
  const rest = 1 - a * a * a;
  return rest <= 0 ? 0 : rest * rest * rest;
}
