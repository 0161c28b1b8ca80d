import {
  fitFrom,
  type LocalFit,
  localWindow,
  type Rows,
  rowsOf,
  type Samples,
  weightedSum,
} from './local-polynomial.ts';

/** Value and slope of a noisy signal at an instant, with their errors and how strongly they go together. */
export type SlopePoint = {
  readonly value: number;
  readonly slope: number;
  readonly valueVariance: number;
  readonly slopeVariance: number;
  readonly covariance: number;
};

export type SlopeEstimator = {
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
 * Valid:  eight samples at five instants or more.
 * Source: Goldenshluger and Lepski, Annals of Statistics 39 (2011) 1608 (from memory); constants tuned on
 *         generated drives (tests/bench/power-accuracy.bench.ts).
 */
export function slopeEstimator(samples: Samples): SlopeEstimator {
  const { time } = samples;
  const first = time[0] as number;
  const last = time.at(-1) as number;
  const lattice = Float64Array.from(
    { length: latticeSize },
    (_, i) => first + ((last - first) * (i + 0.5)) / latticeSize,
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
    fullWidth: fullWidthOf(samples, mixedFit(samples, (first + last) / 2, smoothers)),
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
