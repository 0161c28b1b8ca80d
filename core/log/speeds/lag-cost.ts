import { medianOf } from '../median.ts';
import type { Span } from '../span.ts';
import { heldReadings } from '../time/held-readings.ts';
import { indexAt } from './speed-ratio.ts';

/** What is looked at before and after a pull [s]: the foot going down and coming up says most. */
const around_s = 3;
/** Seconds that show how a slow sensor is read. */
const readings_s = 10;
/** Lags that are tried [s]: a smoothed channel, a satellite receiver, a slow bus. */
export const earliest_s = -0.3;
export const latest_s = 1.3;
/** Step of engine speed between its rows [s], and half of the time its slope is taken over. */
export const grid_s = 0.05;
const halfSlope = 4;
/** Slower than this no gear is told [m/s]. */
const slowest = 3.5;
/** Slip at the largest force of a pull: 1 to 3 % (common practice). */
const slip = { centre: 0.02, error: 0.01 };
/** Rolling and air of a usual car [m/s^2, 1/m]: they only weigh how slip goes with force. */
const rolling = 0.12;
const air = 0.00028;
/** Scatter of a sound ratio, one sample. */
const scatter = 0.004;
/** Beyond so many deviations a sample is another gear or an open clutch and counts no further. */
const cut = 4;
/** Samples closer than this say the same thing [s]. */
const alike_s = 0.1;
/** More samples around a pull say nothing more. */
const mostSamples = 100;
/** Readings of vehicle speed in a pull and the seconds around it. */
export type LagSamples = {
  readonly time: Float64Array;
  readonly speed: Float64Array;
  /** Deviation of one ratio, relative. */
  readonly noise: Float64Array;
  /** Places of the pull's own samples. */
  readonly pullFrom: number;
  readonly pullTo: number;
  /** Independent samples over samples. */
  readonly worth: number;
};

/** Readings of vehicle speed in the pull and around it. */
export function samplesAround(
  time: Float64Array,
  speed: Float64Array,
  pull: Span,
  segment: Span,
): LagSamples {
  const start = time[pull.from] as number;
  const end = time[pull.to - 1] as number;
  const near = (t: number, reach: number, isStart: boolean) =>
    indexAt(time, isStart ? t - reach : t + reach, segment.from, segment.to);
  const from = near(start, around_s, true);
  const to = near(end, around_s + latest_s, false);
  const held = heldReadings(time, speed, near(start, readings_s, true), near(end, readings_s, false));
  const every = held ? 1 : Math.max(1, Math.ceil((to - from) / mostSamples));
  const rows = held ? held.rows.filter((i) => i >= from && i < to) : everyRow(from, to, every);
  let count = 0;
  for (let k = 0; k < rows.length; k++) {
    const i = rows[k] as number;
    const isLater = i === from || (time[i] as number) > (time[i - 1] as number);
    if (isLater && (speed[i] as number) >= slowest) rows[count++] = i;
  }
  const used = rows.subarray(0, count);
  const t = atRows(time, used);
  const v = atRows(speed, used);
  const rounding = 0.29 * stepOfRows(speed, from, to);
  const noise = new Float64Array(count);
  for (let k = 0; k < count; k++) noise[k] = Math.sqrt(scatter ** 2 + (rounding / (v[k] as number)) ** 2);
  const gap = t.length > 1 ? ((t.at(-1) as number) - (t[0] as number)) / (t.length - 1) : 1;
  return {
    time: t,
    speed: v,
    noise,
    pullFrom: indexAt(t, start, 0, t.length),
    pullTo: indexAt(t, end + 1e-9, 0, t.length),
    worth: Math.min(1, gap / alike_s),
  };
}

/** Every second of the samples. */
export function halfOf(samples: LagSamples): LagSamples {
  const isEven = (_: number, i: number) => i % 2 === 0;
  return {
    time: samples.time.filter(isEven),
    speed: samples.speed.filter(isEven),
    noise: samples.noise.filter(isEven),
    pullFrom: (samples.pullFrom + 1) >> 1,
    pullTo: (samples.pullTo + 1) >> 1,
    worth: Math.min(1, 2 * samples.worth),
  };
}

function everyRow(from: number, to: number, every: number): Int32Array {
  const rows = new Int32Array(Math.max(0, Math.floor((to - from) / every)));
  for (let k = 0; k < rows.length; k++) rows[k] = from + k * every;
  return rows;
}

function atRows(values: Float64Array, rows: Int32Array): Float64Array {
  const out = new Float64Array(rows.length);
  for (let k = 0; k < out.length; k++) out[k] = values[rows[k] as number] as number;
  return out;
}

/** Smallest change from row to row: the step of the written numbers or less. */
function stepOfRows(values: Float64Array, from: number, to: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = from + 1; i < to; i++) {
    const jump = Math.abs((values[i] as number) - (values[i - 1] as number));
    if (jump > 1e-9 && jump < least) least = jump;
  }
  return Number.isFinite(least) ? least : 0;
}

export type EngineTable = {
  readonly first: number;
  /** Engine speed over vehicle speed in the pull, as logged [rad/m]. */
  readonly ratio: number;
  readonly value: Float64Array;
  /** F / Fmax, Fmax the largest of the pull. */
  readonly force: Float64Array;
  /** Relative deviation of the ratio where slip comes and goes faster than the slope of engine speed can tell. */
  readonly doubt: Float64Array;
};

/** A pull and what is around it last seconds; what lasts hours is none, and must not fill the memory. */
const mostInstants = 100_000;

/**
 * Engine speed and what share of the largest force the car drives with, at even instants; null where the pull has no
 * force, or lasts too long for one.
 */
export function engineTable(
  time: Float64Array,
  engineSpeed: Float64Array,
  segment: Span,
  samples: LagSamples,
): EngineTable | null {
  const first = (samples.time[0] as number) - latest_s - grid_s;
  const last = (samples.time.at(-1) as number) - earliest_s + grid_s;
  const count = Math.ceil((last - first) / grid_s) + 1;
  if (count > mostInstants) return null;
  const value = new Float64Array(count).fill(Number.NaN);
  let i = indexAt(time, first, segment.from, segment.to);
  for (let k = 0; k < count; k++) {
    const t = first + k * grid_s;
    while (i < segment.to && (time[i] as number) < t) i++;
    if (i <= segment.from || i >= segment.to) continue;
    const a = time[i - 1] as number;
    const share = (t - a) / ((time[i] as number) - a);
    value[k] = (engineSpeed[i - 1] as number) * (1 - share) + (engineSpeed[i] as number) * share;
  }
  const ratio = new Float64Array(samples.time.length);
  for (let k = 0; k < ratio.length; k++)
    ratio[k] = at(value, first, samples.time[k] as number) / (samples.speed[k] as number);
  const k0 = medianOf(ratio, samples.pullFrom, samples.pullTo);
  if (!(k0 > 0)) return null;
  const force = new Float64Array(count);
  const even = meansAround(value);
  for (let k = 0; k < count; k++) {
    const low = Math.max(0, k - halfSlope);
    const high = Math.min(count - 1, k + halfSlope);
    const a = ((even[high] as number) - (even[low] as number)) / ((high - low) * grid_s * k0);
    const v = (value[k] as number) / k0;
    force[k] = a + rolling + air * v * v;
  }
  const pullFrom = Math.max(0, Math.floor(((samples.time[samples.pullFrom] as number) - first) / grid_s));
  const pullTo = Math.ceil(((samples.time[samples.pullTo - 1] as number) - first) / grid_s);
  let most = 0;
  for (let k = pullFrom; k <= pullTo && k < count; k++)
    if ((force[k] as number) > most) most = force[k] as number;
  if (!(most > 0)) return null;
  for (let k = 0; k < count; k++) force[k] = Math.max(-0.5, Math.min(1.1, (force[k] as number) / most));
  const doubt = new Float64Array(count);
  for (let k = 0; k < count; k++) {
    const low = force[Math.max(0, k - halfSlope)] as number;
    const swing =
      (slip.centre + slip.error) * Math.abs((force[Math.min(count - 1, k + halfSlope)] as number) - low);
    for (let i = Math.max(0, k - halfSlope); i <= k + halfSlope && i < count; i++)
      if (swing > (doubt[i] as number)) doubt[i] = swing;
  }
  return { first, ratio: k0, value, force, doubt };
}

/** Mean of up to five values around each: noise of engine speed would pass for force that comes and goes. */
function meansAround(values: Float64Array): Float64Array {
  const out = new Float64Array(values.length);
  for (let k = 0; k < out.length; k++) {
    const reach = Math.min(2, k, values.length - 1 - k);
    let sum = 0;
    for (let i = k - reach; i <= k + reach; i++) sum += values[i] as number;
    out[k] = sum / (2 * reach + 1);
  }
  return out;
}

/** Further from the pull's ratio than lag and slip bring it, and nearer than the next gear. */
const sameGear = 0.2;

/** Engine speed of the table as the pull's gear has it: where another one is engaged or none, by the road speed. */
export function speedInGear({ value, first, ratio }: EngineTable, { time, speed }: LagSamples): Float64Array {
  const out = value.slice();
  let i = 1;
  for (let k = 0; k < out.length; k++) {
    const t = first + k * grid_s;
    while (i < time.length - 1 && (time[i] as number) < t) i++;
    const a = time[i - 1] as number;
    const share = Math.min(1, Math.max(0, (t - a) / ((time[i] as number) - a)));
    const w = ratio * ((speed[i - 1] as number) * (1 - share) + (speed[i] as number) * share);
    if (!(Math.abs((out[k] as number) / w - 1) < sameGear)) out[k] = w;
  }
  return out;
}

function at(values: Float64Array, first: number, t: number): number {
  const x = (t - first) / grid_s;
  const i = Math.floor(x);
  const a = values[i] as number;
  return a + (x - i) * ((values[i + 1] as number) - a);
}

/** Squared deviations that a lag leaves, each sample counted up to the cut, with ratio and slip fitted to it. */
export function costOf(samples: LagSamples, engine: EngineTable, speeds: Float64Array, lag: number): number {
  const { time, speed, worth } = samples;
  const n = time.length;
  const off = new Float64Array(n);
  const force = new Float64Array(n);
  const noise = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const place = ((time[i] as number) - lag - engine.first) / grid_s;
    const k = Math.floor(place);
    const share = place - k;
    // A gap in engine speed is passed over with its ratio.
    const unsure = between(engine.doubt, k, share) || 0;
    const own = samples.noise[i] as number;
    noise[i] = Math.sqrt(own * own + unsure * unsure);
    off[i] = between(speeds, k, share) / (speed[i] as number);
    force[i] = between(engine.force, k, share);
  }
  // Deviations of the ratio from its middle, so that a plain line may be fitted.
  const centre = medianOf(off, samples.pullFrom, samples.pullTo);
  for (let i = 0; i < n; i++) off[i] = (off[i] as number) / centre - 1;
  let level = -slip.centre * 0.8;
  let slope = slip.centre;
  for (let pass = 0; pass < 3; pass++) {
    const reach = cut * (pass === 0 ? 3 : 1);
    let w0 = 0;
    let w1 = 0;
    let w2 = 1 / slip.error ** 2;
    let y0 = 0;
    let y1 = slip.centre * w2;
    for (let i = 0; i < n; i++) {
      const y = off[i] as number;
      const f = force[i] as number;
      const deviation = noise[i] as number;
      const u = (y - level - slope * f) / (reach * deviation);
      const rest = 1 - u * u;
      if (!(rest > 0)) continue;
      const weight = (worth * rest * rest) / (deviation * deviation);
      w0 += weight;
      w1 += weight * f;
      w2 += weight * f * f;
      y0 += weight * y;
      y1 += weight * f * y;
    }
    const determinant = w0 * w2 - w1 * w1;
    if (!(w0 > 0) || !(determinant > 1e-12 * w0 * w2)) break;
    level = (y0 * w2 - y1 * w1) / determinant;
    slope = (w0 * y1 - w1 * y0) / determinant;
  }
  let lost = 0;
  for (let i = 0; i < n; i++) {
    const u = ((off[i] as number) - level - slope * (force[i] as number)) / (cut * (noise[i] as number));
    const rest = 1 - u * u;
    lost += rest > 0 ? 1 - rest * rest * rest : 1;
  }
  return ((slope - slip.centre) / slip.error) ** 2 + (worth * cut * cut * lost) / 3;
}

/** A table's number a share of the way from its k-th place to the next. */
function between(values: Float64Array, k: number, share: number): number {
  const a = values[k] as number;
  return a + share * ((values[k + 1] as number) - a);
}
