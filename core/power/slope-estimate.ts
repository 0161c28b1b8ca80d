import { productInBand, rowLength, solveBand } from './band.ts';
import { type SolvedSpline, solveBends } from './bends.ts';
import { type Cells, cellOf, slopeWeights, valueWeights } from './cubic-cells.ts';
import type { Samples } from './local-polynomial.ts';
import { widthOfKernel } from './slope-kernel.ts';

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
  readonly withErrors: (times: Float64Array) => SlopeCurve & SlopeErrors;
  /** Full width at half height of the kernel that the true slope is seen through in the middle of the signal [s]. */
  readonly fullWidth: number;
};

/** Width of a cell [s]: a third of the shortest time in which an engine's torque changes. */
const cellWidth = 0.09;
/** What lasts longer than 18 s in one gear changes slowly. */
const mostCells = 200;
/** Coarse serves where the slope is only needed to tell how force changes in a pull. */
const coarser = 2;
/**
 * How far the slope may be expected to wander within a second, squared, as a share of its mean squared: by a quarter.
 * It matters at the ends alone; tuned on generated drives.
 */
const wander = 0.08;

/**
 * Slope of a signal by a smoothing spline that finds out from the data how much it may bend at each place (bends.ts):
 * narrow where boost comes in, wide on the plateau.
 *
 * @param samples   weights are 1 / variance, in the signal's own unit
 * @param effort    coarse: wider cells, and one measure of bending throughout
 * @returns         estimator; its errors hold the noise and what a bend of the usual size would hide
 *
 * Valid:  eight samples at five instants or more. Past the first and the last sample the polynomial there goes on.
 * Source: as bends.ts. Its plain twin is tests/support/plain-slope.ts.
 */
export function slopeEstimator(samples: Samples, effort: 'fine' | 'coarse' = 'fine'): SlopeEstimator {
  const { time, value } = samples;
  const last = time.length - 1;
  const first = time[0] as number;
  const span = (time[last] as number) - first;
  const wanted = Math.round(span / (effort === 'fine' ? cellWidth : coarser * cellWidth));
  const count = Math.max(4, Math.min(mostCells, wanted));
  const cells: Cells = { first, width: span / count, count };
  // Digits are kept for what departs from a straight rise.
  const rise = ((value[last] as number) - (value[0] as number)) / span;
  const line = (t: number) => (value[0] as number) + rise * (t - first);
  const solved = splineOf(samples, cells, line, effort === 'fine');
  return {
    along: (times) => curveAt(solved, cells, line, rise, times),
    withErrors: (times) => ({
      ...curveAt(solved, cells, line, rise, times),
      ...errorsAt(solved, cells, times),
    }),
    fullWidth: fullWidthOf(samples, solved, cells),
  };
}

function splineOf(
  { time, value, weight }: Samples,
  cells: Cells,
  line: (time: number) => number,
  isLocal: boolean,
): SolvedSpline {
  const size = cells.count + 3;
  const information = new Float64Array(size * rowLength);
  const right = new Float64Array(size);
  const of = new Float64Array(4);
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < time.length; i++) {
    const t = time[i] as number;
    const v = value[i] as number;
    if (v < lowest) lowest = v;
    if (v > highest) highest = v;
    const k = cellOf(cells, t);
    valueWeights(cells, k, t, of);
    const y = v - line(t);
    for (let a = 0; a < 4; a++) {
      const w = (weight[i] as number) * (of[a] as number);
      right[k + a] = (right[k + a] as number) + w * y;
      for (let b = a; b < 4; b++) {
        const at = (k + a) * rowLength + b - a;
        information[at] = (information[at] as number) + w * (of[b] as number);
      }
    }
  }
  const mean = Math.max((highest - lowest) / (cells.count * cells.width), 1e-9);
  const change = wander * mean * mean * cells.width ** 3;
  return solveBends(information, right, cells.width, change, isLocal);
}

function curveAt(
  { coefficients }: SolvedSpline,
  cells: Cells,
  line: (time: number) => number,
  rise: number,
  times: Float64Array,
): SlopeCurve {
  const value = new Float64Array(times.length);
  const slope = new Float64Array(times.length);
  const of = new Float64Array(4);
  for (let i = 0; i < times.length; i++) {
    const t = times[i] as number;
    const k = cellOf(cells, t);
    valueWeights(cells, k, t, of);
    value[i] = line(t) + fourOf(coefficients, k, of);
    slopeWeights(cells, k, t, of);
    slope[i] = rise + fourOf(coefficients, k, of);
  }
  return { value, slope };
}

function errorsAt({ covariance: z }: SolvedSpline, cells: Cells, times: Float64Array): SlopeErrors {
  const valueVariance = new Float64Array(times.length);
  const slopeVariance = new Float64Array(times.length);
  const covariance = new Float64Array(times.length);
  const ofValue = new Float64Array(4);
  const ofSlope = new Float64Array(4);
  for (let i = 0; i < times.length; i++) {
    const t = times[i] as number;
    const k = cellOf(cells, t);
    valueWeights(cells, k, t, ofValue);
    slopeWeights(cells, k, t, ofSlope);
    valueVariance[i] = productInBand(z, k, ofValue, ofValue);
    slopeVariance[i] = productInBand(z, k, ofSlope, ofSlope);
    covariance[i] = productInBand(z, k, ofValue, ofSlope);
  }
  return { valueVariance, slopeVariance, covariance };
}

/** Four coefficients from the k-th on, by their weights. */
function fourOf(coefficients: Float64Array, k: number, of: Float64Array): number {
  let sum = 0;
  for (let a = 0; a < 4; a++) sum += (of[a] as number) * (coefficients[k + a] as number);
  return sum;
}

function fullWidthOf({ time, weight }: Samples, { factors }: SolvedSpline, cells: Cells): number {
  const middle = cells.first + (cells.width * cells.count) / 2;
  const influence = new Float64Array(cells.count + 3);
  const k = cellOf(cells, middle);
  slopeWeights(cells, k, middle, influence.subarray(k, k + 4));
  solveBand(factors, influence);
  const of = new Float64Array(4);
  const weights = new Float64Array(time.length);
  for (let i = 0; i < time.length; i++) {
    const t = time[i] as number;
    const cell = cellOf(cells, t);
    valueWeights(cells, cell, t, of);
    weights[i] = (weight[i] as number) * fourOf(influence, cell, of);
  }
  return widthOfKernel(weights, time);
}
