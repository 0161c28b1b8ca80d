import { rangeWithin } from '../../log/index.ts';
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

/** Samples some of which run ahead: such a one reads the value and so many seconds of its slope. */
export type LeadingSamples = Samples & { readonly lead?: Float64Array };

export type SlopeEstimator = {
  /** At the instants given. */
  readonly along: (times: Float64Array) => SlopeCurve;
  readonly withErrors: (times: Float64Array) => SlopeCurve & SlopeErrors;
  /** Full width at half height of the kernel that the true slope is seen through in the middle of the signal [s]. */
  readonly fullWidth: () => number;
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
 * @param samples   in any order; weights are 1 / variance, in the signal's own unit
 * @param effort    coarse: wider cells, and one measure of bending throughout
 * @returns         estimator; its errors hold the noise and what a bend of the usual size would hide
 *
 * Valid:  eight samples at five instants or more. Past the first and the last sample the polynomial there goes on.
 * Source: as bends.ts. Its plain twin is tests/support/plain-slope.ts.
 */
export function slopeEstimator(samples: LeadingSamples, effort: 'fine' | 'coarse' = 'fine'): SlopeEstimator {
  const { time, value } = samples;
  const { low: first, high: last } = rangeWithin(time, 0, time.length);
  const span = last - first;
  const wanted = Math.round(span / (effort === 'fine' ? cellWidth : coarser * cellWidth));
  const count = Math.max(4, Math.min(mostCells, wanted));
  const cells: Cells = { first, width: span / count, count };
  // Digits are kept for what departs from a straight rise.
  const base = value[0] as number;
  const rise = ((value.at(-1) as number) - base) / span;
  const line = { base, rise };
  const { information, right } = knownOf(samples, cells, line);
  const { low, high } = rangeWithin(value, 0, value.length);
  const mean = Math.max((high - low) / (count * cells.width), 1e-9);
  const change = wander * mean * mean * cells.width ** 3;
  const solved = solveBends(information, right, cells.width, change, effort === 'fine');
  return {
    along: (times) => curveAt(solved, cells, line, times),
    withErrors: (times) => ({ ...curveAt(solved, cells, line, times), ...errorsAt(solved, cells, times) }),
    fullWidth: () => fullWidthOf(information, solved, cells),
  };
}

/** Straight rise from the first instant on. */
type Line = { readonly base: number; readonly rise: number };

/** What the samples know of the coefficients, as a band, and weights times values beside the line. */
function knownOf({ time, value, weight, lead }: LeadingSamples, cells: Cells, { base, rise }: Line) {
  const information = new Float64Array((cells.count + 3) * rowLength);
  const right = new Float64Array(cells.count + 3);
  const of = new Float64Array(4);
  const ofSlope = new Float64Array(4);
  for (let i = 0; i < time.length; i++) {
    const t = time[i] as number;
    const w = weight[i] as number;
    const ahead = lead ? (lead[i] as number) : 0;
    const k = cellOf(cells, t);
    valueWeights(cells, k, t, of);
    if (ahead !== 0) {
      slopeWeights(cells, k, t, ofSlope);
      for (let a = 0; a < 4; a++) of[a] = (of[a] as number) + ahead * (ofSlope[a] as number);
    }
    const y = w * ((value[i] as number) - (base + rise * (t - cells.first + ahead)));
    for (let a = 0; a < 4; a++) right[k + a] = (right[k + a] as number) + y * (of[a] as number);
    addSquare(information, k * rowLength, w, of);
  }
  return { information, right };
}

/** Adds four numbers times each other, times a weight, to a band from a row on; written out: each sample asks for it. */
function addSquare(band: Float64Array, at: number, weight: number, of: Float64Array): void {
  const [a, b, c, d] = [of[0] as number, of[1] as number, of[2] as number, of[3] as number];
  const [wa, wb, wc] = [weight * a, weight * b, weight * c];
  band[at] = (band[at] as number) + wa * a;
  band[at + 1] = (band[at + 1] as number) + wa * b;
  band[at + 2] = (band[at + 2] as number) + wa * c;
  band[at + 3] = (band[at + 3] as number) + wa * d;
  band[at + 4] = (band[at + 4] as number) + wb * b;
  band[at + 5] = (band[at + 5] as number) + wb * c;
  band[at + 6] = (band[at + 6] as number) + wb * d;
  band[at + 8] = (band[at + 8] as number) + wc * c;
  band[at + 9] = (band[at + 9] as number) + wc * d;
  band[at + 12] = (band[at + 12] as number) + weight * d * d;
}

function curveAt(
  { coefficients }: SolvedSpline,
  cells: Cells,
  { base, rise }: Line,
  times: Float64Array,
): SlopeCurve {
  const value = new Float64Array(times.length);
  const slope = new Float64Array(times.length);
  const of = new Float64Array(4);
  for (let i = 0; i < times.length; i++) {
    const t = times[i] as number;
    const k = cellOf(cells, t);
    valueWeights(cells, k, t, of);
    value[i] = base + rise * (t - cells.first) + fourOf(coefficients, k, of);
    slopeWeights(cells, k, t, of);
    slope[i] = rise + fourOf(coefficients, k, of);
  }
  return { value, slope };
}

function errorsAt(solved: SolvedSpline, cells: Cells, times: Float64Array): SlopeErrors {
  const z = solved.covariance();
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

/** The kernel told at the middle of each coefficient's reach: what the samples make of a rise there. */
function fullWidthOf(information: Float64Array, { factors }: SolvedSpline, cells: Cells): number {
  const size = cells.count + 3;
  const middle = cells.first + (cells.width * cells.count) / 2;
  const influence = new Float64Array(size);
  const k = cellOf(cells, middle);
  slopeWeights(cells, k, middle, influence.subarray(k, k + 4));
  solveBand(factors, influence);
  const weights = new Float64Array(size);
  const time = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    time[i] = cells.first + (i - 1) * cells.width;
    for (let d = 0; d < rowLength && i + d < size; d++) {
      const both = information[i * rowLength + d] as number;
      weights[i] = (weights[i] as number) + both * (influence[i + d] as number);
      if (d > 0) weights[i + d] = (weights[i + d] as number) + both * (influence[i] as number);
    }
  }
  return widthOfKernel(weights, time);
}
