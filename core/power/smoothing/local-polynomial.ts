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
  const local = localWindow(samples, at, halfWidth, degree, kernel);
  return fitFrom(samples, at, local, rowsOf(local.moments, degree));
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
function localWindow(
  samples: Samples,
  at: number,
  halfWidth: number,
  degree: number,
  kernel: Kernel = 'tricube',
): LocalWindow {
  const { time, weight } = samples;
  const { from, to, h } = windowAround(time, at, halfWidth, degree + 2);
  const weights = new Float64Array(to - from);
  const moments = new Float64Array(2 * degree + 1);
  for (let i = from; i < to; i++) {
    const u = ((time[i] as number) - at) / h;
    let p = (weight[i] as number) * (kernel === 'uniform' ? 1 : tricube(u));
    weights[i - from] = p;
    for (let k = 0; k < moments.length; k++) {
      moments[k] = (moments[k] as number) + p;
      p *= u;
    }
  }
  return { from, h, weights, moments };
}

/** Coefficients of the polynomials in u by which the weights are multiplied, for the value and for the slope. */
export type Rows = { readonly value: Row; readonly slope: Row };
type Row = readonly [number, number, number, ...number[]];

/** First two rows of the inverse of the moment matrix; of the next lower degree where it can't be inverted. */
function rowsOf(moments: Float64Array, degree: number): Rows {
  const s0 = moments[0] as number;
  const s1 = moments[1] as number;
  const s2 = moments[2] as number;
  if (degree === 1) return lineRows(s0, s1, s2);
  const rows =
    degree === 2
      ? parabolaRows(s0, s1, s2, moments[3] as number, moments[4] as number)
      : anyRows(moments, degree);
  return rows ?? rowsOf(moments, degree - 1);
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

/** Rows of the line; throws where all instants are one. */
export function lineRows(s0: number, s1: number, s2: number): Rows {
  const d = s0 * s2 - s1 * s1;
  if (!(d > 1e-12 * s0 * s2)) throw new Error('a local fit needs two distinct instants');
  return { value: [s2 / d, -s1 / d, 0], slope: [-s1 / d, s0 / d, 0] };
}

/** Rows of the parabola; null where its instants are too few. */
export function parabolaRows(s0: number, s1: number, s2: number, s3: number, s4: number): Rows | null {
  const c00 = s2 * s4 - s3 * s3;
  const c01 = s2 * s3 - s1 * s4;
  const c02 = s1 * s3 - s2 * s2;
  const d = s0 * c00 + s1 * c01 + s2 * c02;
  if (!(d > 1e-12 * s0 * s2 * s4)) return null;
  const c11 = s0 * s4 - s2 * s2;
  const c12 = s1 * s2 - s0 * s3;
  return { value: [c00 / d, c01 / d, c02 / d], slope: [c01 / d, c11 / d, c12 / d] };
}

function anyRows(moments: Float64Array, degree: number): Rows | null {
  const size = degree + 1;
  const normal = new Float64Array(size * size);
  for (let r = 0; r < size; r++)
    for (let c = 0; c < size; c++) normal[r * size + c] = moments[r + c] as number;
  const value = inverseColumn(normal, size, 0);
  const slope = inverseColumn(normal, size, 1);
  return value && slope ? { value: [...value] as unknown as Row, slope: [...slope] as unknown as Row } : null;
}

/** Weights times the samples from `from` on. */
export function weightedSum(weights: Float64Array, values: Float64Array, from: number): number {
  let sum = 0;
  for (let i = 0; i < weights.length; i++) sum += (weights[i] as number) * (values[from + i] as number);
  return sum;
}

/** Samples within the half width, widened until so many distinct instants lie inside. */
export function windowAround(time: Float64Array, at: number, halfWidth: number, needed: number) {
  const n = time.length;
  let from = lowerBound(time, at - halfWidth);
  let to = lowerBound(time, at + halfWidth);
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
  for (let i = from + 1; i < to && count < 6; i++) if (time[i] !== time[i - 1]) count++;
  return count;
}

/** (1 - |u|^3)^3 inside, 0 outside. */
export function tricube(u: number): number {
  const a = Math.abs(u);
  const rest = 1 - a * a * a;
  return rest <= 0 ? 0 : rest * rest * rest;
}

function inverseColumn(normal: Matrix, size: number, which: number): Float64Array | null {
  const unit = new Float64Array(size);
  unit[which] = 1;
  return solveNormal(normal, unit, size);
}
