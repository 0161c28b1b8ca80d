import {
  type Channel,
  heldReadings,
  indexAt,
  type Log,
  median,
  rangeWithin,
  sampleFlag,
} from '../../log/index.ts';
import { localFit, type Samples, weightedSum } from '../smoothing/local-polynomial.ts';
import { beatOf, changeCount, changesOf, isRising, stepOf } from './signal-steps.ts';

/** A speed channel inside a window, freed of what is no measurement: repeats, steps, spikes. */
export type SpeedSignal = {
  readonly time: Float64Array;
  readonly value: Float64Array;
  /** Step of the written numbers where it matters, else 0. */
  readonly step: number;
  /** Seconds between true readings where the file repeats them, else 0. */
  readonly hold: number;
  readonly outliers: number;
  /** Standard deviation of one sample, steps included. */
  readonly noise: number;
  /** Seconds of slope that each sample reads besides the speed, where there are any. */
  readonly lead?: Float64Array;
};

/**
 * What a channel truly measured between two samples.
 *
 * - Empty, unreadable and held cells are left out; so are repeats of a sensor slower than the file, recognised by
 *   changes that come on a fixed beat of rows, or by jumps of several steps after rows without any.
 * - A rising signal written in steps wider than its rise per row is read at its changes: there it passed half way
 *   between the two numbers (taken as rounded, not cut off), and that is known far better than the rows between.
 * - Spikes beyond six times the scatter about a short local line are left out.
 *
 * @param range  numbers outside it cannot be and are left out
 * @returns null where fewer than six samples remain
 */
export function speedSignal(
  log: Log,
  channel: Channel,
  from: number,
  to: number,
  range: readonly [number, number] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY],
): SpeedSignal | null {
  let { time, value } = readingsOf(log, channel, from, to, range);
  if (time.length < 6) return null;
  const step = stepOf(value);
  let changed = changeCount(value);
  const beat = beatOf(value, step, changed);
  let hold = 0;
  if (beat) {
    hold = median(gapsOf(time)) * beat.every;
    time = time.filter((_, i) => beat.isReading(i));
    value = value.filter((_, i) => beat.isReading(i));
    changed = changeCount(value);
  }
  let isStepped = false;
  const run = value.length / (1 + changed);
  if (step > 0 && run >= 1.8 && isRising(value)) {
    const changes = changesOf(time, value);
    if (changes.time.length >= 6) {
      ({ time, value } = changes);
      isStepped = true;
    }
  }
  if (time.length < 6) return null;
  const clean = thinned(withoutSpikes(time, value, step));
  const noise = noiseOf(clean.time, clean.value);
  const quantum = isStepped ? 0 : step / Math.sqrt(12);
  return {
    time: clean.time,
    value: clean.value,
    step: isStepped || step > 1.5 * noise ? step : 0,
    hold,
    outliers: clean.spikes,
    // Scatter can't be told below the steps: a signal that happens to fall on its marks is no better for it.
    noise: Math.max(noise, quantum, 1e-9 * Math.abs(value.at(-1) as number)),
  };
}

/** Seconds before and after a window that show how a slow sensor is read. */
const around = 10;
/** A slow sensor's own noise, which a few readings can't show [m/s] (common practice: a tenth of a km/h or two). */
const readingNoise = 0.05;
/** Readings further apart than this are no shape of a pull [s]. */
const seldom = 0.28;

/**
 * A road speed that is read seldom and repeated in between: its readings inside the window, however few; null where
 * it is read often.
 */
export function seldomSpeed(
  log: Log,
  channel: Channel,
  from: number,
  to: number,
  [least, most]: readonly [number, number],
): SpeedSignal | null {
  const segment = log.segments.find((s) => s.from <= from && from < s.to);
  if (!segment) return null;
  const at = (i: number) => log.time[i] as number;
  const first = indexAt(log.time, at(from) - around, segment.from, from);
  const last = indexAt(log.time, at(to - 1) + around, to, segment.to);
  const held = heldReadings(log.time, channel.values, first, last);
  if (!held || held.interval < seldom) return null;
  const rows = held.rows.filter((i) => {
    const v = channel.values[i] as number;
    return i >= from && i < to && v >= least && v <= most;
  });
  const value = Float64Array.from(rows, (i) => channel.values[i] as number);
  const step = stepOf(Float64Array.from(held.rows, (i) => channel.values[i] as number));
  return {
    time: Float64Array.from(rows, at),
    value,
    step: 0,
    hold: held.interval,
    outliers: 0,
    noise: Math.hypot(readingNoise, step / Math.sqrt(12)),
  };
}

/** Samples that are numbers in range, newly read, at times that rise. */
function readingsOf(log: Log, channel: Channel, from: number, to: number, range: readonly [number, number]) {
  const [least, most] = range;
  const { values, flags } = channel;
  const times = log.time;
  const time = new Float64Array(Math.max(0, to - from));
  const value = new Float64Array(time.length);
  let count = 0;
  let latest = Number.NEGATIVE_INFINITY;
  for (let i = from; i < to; i++) {
    const t = times[i] as number;
    const v = values[i] as number;
    // A NaN is in no range.
    if (!(v >= least && v <= most && t > latest) || ((flags[i] as number) & sampleFlag.held) !== 0) continue;
    time[count] = t;
    value[count] = v;
    latest = t;
    count++;
  }
  return { time: time.subarray(0, count), value: value.subarray(0, count) };
}

function gapsOf(time: Float64Array): Float64Array {
  const gaps = new Float64Array(Math.max(0, time.length - 1));
  for (let i = 1; i < time.length; i++) gaps[i - 1] = (time[i] as number) - (time[i - 1] as number);
  return gaps;
}

/** Two thirds of a cell of the spline that they are for [s] (slope-estimate.ts). */
const shortest = 0.06;

/**
 * Means of so many samples in a row that some 16 a second remain, and never more than some 250: closer ones say
 * nothing about an acceleration that lasts tenths of a second, and cost time.
 */
function thinned(signal: { time: Float64Array; value: Float64Array; spikes: number }) {
  const samples = signal.time.length;
  const seconds = (signal.time[samples - 1] as number) - (signal.time[0] as number);
  const every = Math.floor(Math.max(samples / 250, (shortest * (samples - 1)) / seconds));
  if (every < 2) return signal;
  const count = Math.floor(signal.time.length / every);
  const means = (xs: Float64Array) => {
    const out = new Float64Array(count);
    for (let k = 0; k < count; k++) {
      let sum = 0;
      for (let i = 0; i < every; i++) sum += xs[k * every + i] as number;
      out[k] = sum / every;
    }
    return out;
  };
  return { ...signal, time: means(signal.time), value: means(signal.value) };
}

/**
 * Leaves out samples far from the median of the five around them. A rising signal is its own running median, so
 * the rise does no harm; what a sample may stray is six times the usual, six usual rises, or two steps.
 */
function withoutSpikes(time: Float64Array, value: Float64Array, step: number) {
  const n = value.length;
  const rises = new Float64Array(n - 1);
  for (let i = 1; i < n; i++) rises[i - 1] = Math.abs((value[i] as number) - (value[i - 1] as number));
  const widest = widestStray(value, rises);
  if (widest <= 2 * step || isWithinUsual(rises, widest)) return { time, value, spikes: 0 };
  const least = Math.max(6 * median(rises), 2 * step);
  if (widest <= least) return { time, value, spikes: 0 };
  const stray = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const at = Math.max(0, Math.min(n - 5, i - 2));
    stray[i] = Math.abs((value[i] as number) - medianOfFive(value, at));
  }
  const most = Math.max(6 * 1.4826 * median(stray), least);
  const isKept = (_: number, i: number) => (stray[i] as number) <= most;
  const kept = time.filter(isKept);
  if (kept.length === n) return { time, value, spikes: 0 };
  return { time: kept, value: value.filter(isKept), spikes: n - kept.length };
}

/**
 * No sample strays further from the median of its five: one of its neighbours lies on the median's other side, so that a
 * single rise must be as large; at the ends it may be two in a row.
 */
function widestStray(value: Float64Array, rises: Float64Array): number {
  const n = value.length;
  const first = Math.abs((value[2] as number) - (value[0] as number));
  const last = Math.abs((value[n - 1] as number) - (value[n - 3] as number));
  return Math.max(first, last, rangeWithin(rises, 0, n - 1).high);
}

/** Whether six usual rises reach so far, since most rises do: they are sooner counted than their median is found. */
function isWithinUsual(rises: Float64Array, widest: number): boolean {
  let count = 0;
  for (let i = 0; i < rises.length; i++) if (6 * (rises[i] as number) >= widest) count++;
  return count > rises.length / 2 + 1;
}

/** Median of the five samples from `at` on. */
function medianOfFive(values: Float64Array, at: number): number {
  const a = values[at] as number;
  const b = values[at + 1] as number;
  const c = values[at + 2] as number;
  const d = values[at + 3] as number;
  const e = values[at + 4] as number;
  // Of two pairs the lesser low and the greater high cannot be the middle.
  const low = Math.max(Math.min(a, b), Math.min(c, d));
  const high = Math.min(Math.max(a, b), Math.max(c, d));
  return Math.max(Math.min(low, high), Math.min(Math.max(low, high), e));
}

/**
 * Standard deviation of one sample from the scatter about a short local parabola, its own freedom given back.
 *
 *   s^2 = sum r^2 / sum |delta - weights|^2
 *
 * Where samples lie as evenly as around the one before, its weights serve again: nearly always.
 */
function noiseOf(time: Float64Array, value: Float64Array): number {
  const weight = new Float64Array(time.length).fill(1);
  const samples: Samples = { time, value, weight };
  const gaps = gapsOf(time);
  // Half width of a short local fit: some nine samples, no less than 0.25 s.
  const h = Math.max(0.25, 4.6 * median(gaps));
  // A hundred-thousandth of the width moves no weight that counts.
  const alike = 1e-5 * h;
  const { low, high } = rangeWithin(gaps, 0, gaps.length);
  const isEven = high - low <= alike;
  let squares = 0;
  let freedom = 0;
  let weights: Float64Array = new Float64Array(0);
  let place = -1;
  let own = 0;
  for (let i = 0; i < time.length; i++) {
    const from = i - place;
    const to = from + weights.length;
    const isInside = from >= 2 && to < time.length;
    if (place < 0 || !isInside || !(isEven || isShifted(gaps, from, to, alike))) {
      const fit = localFit(samples, time[i] as number, h, 2);
      weights = fit.valueWeights;
      place = i - fit.from;
      own = 1 - 2 * (weights[place] as number) + sumOfSquares(weights);
    }
    const r = (value[i] as number) - weightedSum(weights, value, i - place);
    squares += r * r;
    freedom += own;
  }
  return Math.sqrt(squares / Math.max(freedom, 1e-9));
}

/** Whether the samples [from, to) lie as those one earlier do, with the same neighbours out of reach. */
function isShifted(gaps: Float64Array, from: number, to: number, alike: number): boolean {
  const shift = gaps[from - 1] as number;
  for (let k = from - 2; k < to; k++) if (Math.abs((gaps[k] as number) - shift) > alike) return false;
  return true;
}

function sumOfSquares(values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += (values[i] as number) ** 2;
  return sum;
}
