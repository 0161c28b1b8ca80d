import { type Channel, type Log, sampleFlag } from '../log/index.ts';
import { localFit, type Samples, weightedSum } from './local-polynomial.ts';
import { beatOf, changesOf, isRising, runLength, stepOf } from './signal-steps.ts';

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
  const index: number[] = [];
  for (let i = from; i < to; i++) {
    const held = ((channel.flags[i] ?? 0) & sampleFlag.held) !== 0;
    const isNew =
      index.length === 0 || (log.time[i] as number) > (log.time[index.at(-1) as number] as number);
    const value = channel.values[i] as number;
    if (Number.isFinite(value) && value >= range[0] && value <= range[1] && !held && isNew) index.push(i);
  }
  if (index.length < 6) return null;
  let time = Float64Array.from(index, (i) => log.time[i] as number);
  let value = Float64Array.from(index, (i) => channel.values[i] as number);
  const step = stepOf(value);
  const beat = beatOf(value, step);
  let hold = 0;
  if (beat) {
    hold = medianGap(time) * beat.every;
    time = time.filter((_, i) => beat.isReading(i));
    value = value.filter((_, i) => beat.isReading(i));
  }
  let isStepped = false;
  if (step > 0 && runLength(value) >= 1.8 && isRising(value)) {
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

function medianGap(time: Float64Array): number {
  const gaps = new Float64Array(Math.max(0, time.length - 1));
  for (let i = 1; i < time.length; i++) gaps[i - 1] = (time[i] as number) - (time[i - 1] as number);
  return median(gaps);
}

export function median(values: Float64Array): number {
  const sorted = Float64Array.from(values).sort();
  const middle = sorted.length >> 1;
  if (sorted.length === 0) return Number.NaN;
  return sorted.length % 2 === 1
    ? (sorted[middle] as number)
    : ((sorted[middle - 1] as number) + (sorted[middle] as number)) / 2;
}

/**
 * Means of so many samples in a row that about 250 remain: past some 30 a second more of them say nothing about an
 * acceleration that lasts tenths of a second, and cost time.
 */
function thinned(signal: { time: Float64Array; value: Float64Array; spikes: number }) {
  const every = Math.floor(signal.time.length / 250);
  if (every < 2) return signal;
  const count = Math.floor(signal.time.length / every);
  const means = (xs: Float64Array) =>
    Float64Array.from({ length: count }, (_, k) => {
      let sum = 0;
      for (let i = 0; i < every; i++) sum += xs[k * every + i] as number;
      return sum / every;
    });
  return { ...signal, time: means(signal.time), value: means(signal.value) };
}

/** Half width of a short local fit: some nine samples, no less than 0.25 s. */
function shortHalfWidth(time: Float64Array): number {
  return Math.max(0.25, 4.6 * medianGap(time));
}

/**
 * Leaves out samples far from the median of the five around them. A rising signal is its own running median, so
 * the rise does no harm; what a sample may stray is six times the usual, six usual rises, or two steps.
 */
function withoutSpikes(time: Float64Array, value: Float64Array, step: number) {
  const n = value.length;
  const stray = value.map((v, i) => {
    const from = Math.max(0, Math.min(n - 5, i - 2));
    return Math.abs(v - median(value.slice(from, from + 5)));
  });
  const rises = Float64Array.from({ length: n - 1 }, (_, i) =>
    Math.abs((value[i + 1] as number) - (value[i] as number)),
  );
  const most = Math.max(6 * 1.4826 * median(stray), 6 * median(rises), 2 * step);
  const isKept = (_: number, i: number) => (stray[i] as number) <= most;
  const kept = time.filter(isKept);
  return { time: kept, value: value.filter(isKept), spikes: n - kept.length };
}

/**
 * Standard deviation of one sample from the scatter about a short local parabola, its own freedom given back.
 *
 *   s^2 = sum r^2 / sum |delta - weights|^2
 */
function noiseOf(time: Float64Array, value: Float64Array): number {
  const weight = new Float64Array(time.length).fill(1);
  const samples: Samples = { time, value, weight };
  const h = shortHalfWidth(time);
  let squares = 0;
  let freedom = 0;
  for (let i = 0; i < time.length; i++) {
    const fit = localFit(samples, time[i] as number, h, 2);
    const r = (value[i] as number) - weightedSum(fit.valueWeights, value, fit.from);
    squares += r * r;
    let norm = 0;
    for (const w of fit.valueWeights) norm += w * w;
    freedom += 1 - 2 * (fit.valueWeights[i - fit.from] as number) + norm;
  }
  return Math.sqrt(squares / Math.max(freedom, 1e-9));
}
