import { type Matrix, solveNormal } from './normal-equations.ts';

/**
 * Values over time, one weight per sample (1 over the variance, up to a common factor).
 * Times never fall; they need not be evenly spaced.
 */
export type Samples = {
  readonly time: Float64Array;
  readonly value: Float64Array;
  readonly weight: Float64Array;
};

export type Kernel = 'tricube' | 'uniform';

/** One local fit: sums over samples from `from` on, value = sum(valueWeights y), slope = sum(slopeWeights y). */
export type LocalFit = {
  readonly from: number;
  readonly valueWeights: Float64Array;
  readonly slopeWeights: Float64Array;
};

/**
 * Weights of a weighted least-squares polynomial around one instant: the value and the slope there are these
 * weights times the samples.
 *
 *   minimise sum K((t_i - t) / h) w_i (y_i - sum b_k (t_i - t)^k)^2;  value b_0, slope b_1
 *
 * @param at         instant [s]
 * @param halfWidth  h [s]; where fewer than degree + 2 instants were sampled inside it is widened until they are
 * @param degree     1 to 4
 *
 * Valid:  also one-sided, at the ends of the samples; the error of the slope is then about four times as large.
 * Source: Savitzky and Golay, Analytical Chemistry 36 (1964) 1627, for even spacing and equal weights; Fan and
 *         Gijbels, Local Polynomial Modelling and Its Applications (1996), chapter 3, for the general form (from
 *         memory).
 * Check:  five even samples, degree 2, uniform kernel: value weights (-3, 12, 17, 12, -3) / 35, slope weights
 *         (-2, -1, 0, 1, 2) / 10 per step.
 */
export function localFit(
  samples: Samples,
  at: number,
  halfWidth: number,
  degree: number,
  kernel: Kernel = 'tricube',
): LocalFit {
  const { time, weight } = samples;
  const { from, to, h } = windowAround(time, at, halfWidth, degree + 2);
  const size = degree + 1;
  const count = to - from;
  const w = new Float64Array(count);
  const moments = new Float64Array(2 * degree + 1);
  for (let i = 0; i < count; i++) {
    const u = ((time[from + i] as number) - at) / h;
    const wi = (weight[from + i] as number) * (kernel === 'uniform' ? 1 : tricube(u));
    w[i] = wi;
    let p = wi;
    for (let k = 0; k < moments.length; k++) {
      moments[k] = (moments[k] as number) + p;
      p *= u;
    }
  }
  const normal = new Float64Array(size * size);
  for (let r = 0; r < size; r++)
    for (let c = 0; c < size; c++) normal[r * size + c] = moments[r + c] as number;
  const valueRow = inverseColumn(normal, size, 0);
  const slopeRow = inverseColumn(normal, size, 1);
  if (!valueRow || !slopeRow) {
    // Samples so lopsided that the highest power can't be told: the next lower one can.
    if (degree > 1) return localFit(samples, at, halfWidth, degree - 1, kernel);
    throw new Error('a local fit needs two distinct instants');
  }
  const valueWeights = new Float64Array(count);
  const slopeWeights = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const u = ((time[from + i] as number) - at) / h;
    let a = 0;
    let b = 0;
    for (let k = degree; k >= 0; k--) {
      a = a * u + (valueRow[k] as number);
      b = b * u + (slopeRow[k] as number);
    }
    valueWeights[i] = (w[i] as number) * a;
    slopeWeights[i] = ((w[i] as number) * b) / h;
  }
  return { from, valueWeights, slopeWeights };
}

/** Weights times the samples from `from` on. */
export function weightedSum(weights: Float64Array, values: Float64Array, from: number): number {
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

function inverseColumn(normal: Matrix, size: number, which: number): Float64Array | null {
  const unit = new Float64Array(size);
  unit[which] = 1;
  return solveNormal(normal, unit, size);
}
