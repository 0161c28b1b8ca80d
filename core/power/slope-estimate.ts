import { type LocalFit, localFit, type Samples } from './local-polynomial.ts';

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

/** Half widths that are tried [s]: a quarter more each time, from what four samples need to half the signal. */
function halfWidths(samples: Samples): number[] {
  const n = new Set(samples.time).size;
  const span = (samples.time.at(-1) as number) - (samples.time[0] as number);
  const widths: number[] = [];
  const least = Math.max(0.18, (2.2 * span) / (n - 1));
  for (let h = least; h < Math.max(least * 1.01, Math.min(2.6, span / 1.6)); h *= 1.34) widths.push(h);
  return widths;
}

type Candidate = { degree: number; halfWidth: number };

/**
 * Slope of a signal by local polynomials of degree 1 and 2 whose bandwidth the data choose.
 *
 * Each candidate (degree, half width) is compared with every noisier one on a lattice of instants. What they
 * differ by beyond noise is the bias of the smoother one; bias plus variance is its risk (Goldenshluger and
 * Lepski's rule, with its two constants at 2). The estimate is the mean of all candidates, weighted by
 * exp(-(risk - least) / (0.3 least)): a sharp choice would jump between neighbours that are equally good.
 *
 * @param samples   weights are 1 / variance, in the signal's own unit
 * @returns         estimator; its errors hold the noise alone
 *
 * Valid:  eight samples or more.
 * Source: Goldenshluger and Lepski, Annals of Statistics 39 (2011) 1608 (from memory); constants tuned on
 *         generated drives, see tests/bench/power.
 */
export function slopeEstimator(samples: Samples): SlopeEstimator {
  const { time } = samples;
  const n = time.length;
  const first = time[0] as number;
  const last = time[n - 1] as number;
  const lattice = Float64Array.from({ length: 32 }, (_, i) => first + ((last - first) * (i + 0.5)) / 32);
  const candidates: Candidate[] = [];
  for (const halfWidth of halfWidths(samples))
    for (const degree of [1, 2]) candidates.push({ degree, halfWidth });
  const fits = candidates.map((c) => Array.from(lattice, (t) => localFit(samples, t, c.halfWidth, c.degree)));
  const risks = risksOf(samples, fits);
  const least = Math.min(...risks);
  const shares = risks.map((r) => Math.exp(-(r - least) / (0.3 * least)));
  const total = shares.reduce((a, b) => a + b, 0);
  const used = candidates
    .map((c, i) => ({ ...c, share: (shares[i] as number) / total }))
    .filter((c) => c.share > 0.005);
  const kept = used.reduce((sum, c) => sum + c.share, 0);
  const mixed = (t: number) =>
    mix(
      samples,
      t,
      used.map((c) => ({ ...c, share: c.share / kept })),
    );
  return {
    at: (t) => pointOf(samples, mixed(t)),
    fullWidth: fullWidthOf(samples, mixed((first + last) / 2)),
  };
}

function risksOf(samples: Samples, fits: readonly (readonly LocalFit[])[]): number[] {
  const slopes = fits.map((row) => row.map((f) => dot(f.slopeWeights, samples.value, f.from)));
  const variances = fits.map((row) => row.map((f) => varianceOf(samples, f, f)));
  const means = variances.map((row) => row.reduce((a, b) => a + b, 0) / row.length);
  return fits.map((row, k) => {
    let bias = 0;
    for (let j = 0; j < fits.length; j++) {
      if ((means[j] as number) <= (means[k] as number)) continue;
      let excess = 0;
      for (let i = 0; i < row.length; i++) {
        const difference = (slopes[j]?.[i] as number) - (slopes[k]?.[i] as number);
        const shared = varianceOf(samples, row[i] as LocalFit, fits[j]?.[i] as LocalFit);
        const noise = (variances[j]?.[i] as number) + (variances[k]?.[i] as number) - 2 * shared;
        excess += difference * difference - 2 * noise;
      }
      bias = Math.max(bias, excess / row.length);
    }
    return bias + 2 * (means[k] as number);
  });
}

type Mixed = { readonly from: number; readonly value: Float64Array; readonly slope: Float64Array };

function mix(samples: Samples, t: number, used: readonly (Candidate & { share: number })[]): Mixed {
  const fits = used.map((c) => localFit(samples, t, c.halfWidth, c.degree));
  const from = Math.min(...fits.map((f) => f.from));
  const to = Math.max(...fits.map((f) => f.from + f.valueWeights.length));
  const value = new Float64Array(to - from);
  const slope = new Float64Array(to - from);
  fits.forEach((f, k) => {
    const share = used[k]?.share as number;
    for (let i = 0; i < f.valueWeights.length; i++) {
      const at = i + f.from - from;
      value[at] = (value[at] as number) + share * (f.valueWeights[i] as number);
      slope[at] = (slope[at] as number) + share * (f.slopeWeights[i] as number);
    }
  });
  return { from, value, slope };
}

function pointOf(samples: Samples, m: Mixed): SlopePoint {
  let valueVariance = 0;
  let slopeVariance = 0;
  let covariance = 0;
  for (let i = 0; i < m.value.length; i++) {
    const variance = 1 / (samples.weight[m.from + i] as number);
    const a = m.value[i] as number;
    const b = m.slope[i] as number;
    valueVariance += a * a * variance;
    slopeVariance += b * b * variance;
    covariance += a * b * variance;
  }
  return {
    value: dot(m.value, samples.value, m.from),
    slope: dot(m.slope, samples.value, m.from),
    valueVariance,
    slopeVariance,
    covariance,
  };
}

function dot(weights: Float64Array, values: Float64Array, from: number): number {
  let sum = 0;
  for (let i = 0; i < weights.length; i++) sum += (weights[i] as number) * (values[from + i] as number);
  return sum;
}

/** Covariance of two slopes under the samples' own noise. */
function varianceOf(samples: Samples, a: LocalFit, b: LocalFit): number {
  const from = Math.max(a.from, b.from);
  const to = Math.min(a.from + a.slopeWeights.length, b.from + b.slopeWeights.length);
  let sum = 0;
  for (let i = from; i < to; i++)
    sum +=
      ((a.slopeWeights[i - a.from] as number) * (b.slopeWeights[i - b.from] as number)) /
      (samples.weight[i] as number);
  return sum;
}

/**
 * The slope weights, summed from the left, are the kernel through which the true slope is seen (summation by
 * parts); its full width at half its greatest height.
 */
function fullWidthOf(samples: Samples, m: Mixed): number {
  const n = m.slope.length;
  const kernel = new Float64Array(n);
  let sum = 0;
  let peak = 0;
  for (let i = 0; i < n; i++) {
    sum -= m.slope[i] as number;
    kernel[i] = sum;
    peak = Math.max(peak, sum);
  }
  const time = (i: number) => samples.time[m.from + i] as number;
  let left = 0;
  while (left < n - 1 && (kernel[left] as number) < peak / 2) left++;
  let right = n - 1;
  while (right > left && (kernel[right] as number) < peak / 2) right--;
  return time(Math.min(n - 1, right + 1)) - time(left);
}
