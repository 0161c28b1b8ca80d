import { indexAt, median, rangeWithin } from '../../log/index.ts';
import { samplesOf } from '../gather.ts';
import { type CurveTable, curveTable } from '../smoothing/curve-table.ts';
import { type SlopeCurve, slopeEstimator } from '../smoothing/slope-estimate.ts';
import { fitSlip, type Nominal, type SlipModel, type SpeedPairs } from './slip.ts';
import type { SpeedSignal } from './speed-signal.ts';

/** Tractive force [N] over road speed [m/s] and acceleration [m/s^2]. */
export type ForceAt = (speed: number, acceleration: number) => number;

/** Step of the tables [s]: half of the narrowest kernel. */
const tableStep = 0.1;
/** Most pulls have settled after one or two. */
const mostRounds = 4;
/** Half a hundredth of a second of lag and a thousandth of slip move power by some 0.1 % (worked out at 3 m/s^2, 25 m/s). */
const settledLag = 0.005;
const settledSlip = 0.001;

/**
 * One estimator from both speeds.
 *
 * Slip, lag and force hang on each other: as torque comes in, slip rises with it, so that engine speed alone shows a
 * straight climb where the car's bends, and a lag seems to be there. So force is first taken from engine speed, then
 * from both speeds as they are joined by what that told.
 */
export function together(
  engine: SpeedSignal,
  road: SpeedSignal,
  usualLag: number,
  nominal: Nominal | null,
  forceAt: ForceAt,
) {
  const read = engineRead(engine);
  const { table } = read;
  const prior = { usualLag, nominal };
  let course = courseOf(scaled(table, usualDistance(table, road)), forceAt);
  const pairs = pairsOf(read, road, 0);
  let model = modelOf(read, road, pairs, course, prior);
  for (let round = 0; round < mostRounds; round++) {
    const before = model;
    const joined = [asRoadSpeed(engine, model, course.peak, forceAt), onTimeOf(table, road, model.lag)];
    course = courseOf(coarseTable(joined, engine.time), forceAt);
    model = modelOf(read, road, pairs, course, prior);
    const isSettled =
      Math.abs(model.lag - before.lag) < settledLag && Math.abs(model.slip - before.slip) < settledSlip;
    if (isSettled) break;
  }
  let believed = road;
  let onTime = onTimeOf(table, road, model.lag);
  const noise = shapeNoise(onTime, engine, table, model, course.share);
  if (noise > road.noise) {
    // Its scale is no better known than its shape: gear and tyre may say more.
    believed = { ...road, noise };
    model = modelOf(read, believed, pairsOf(read, believed, 0), course, prior);
    onTime = onTimeOf(table, believed, model.lag);
  }
  const converted = asRoadSpeed(engine, model, course.peak, forceAt);
  const information = (s: SpeedSignal) => s.time.length / s.noise ** 2;
  return {
    model,
    estimator: slopeEstimator(samplesOf([converted, onTime])),
    basis:
      information(converted) >= information(believed)
        ? ('engine-speed' as const)
        : ('vehicle-speed' as const),
  };
}

/** What is believed before the two speeds are seen. */
type Prior = { readonly usualLag: number; readonly nominal: Nominal | null };

/** @param pairs  of all samples, as if none came late: they stay the same while force is found out */
function modelOf(
  engine: EngineRead,
  road: SpeedSignal,
  pairs: TimedPairs,
  course: Course,
  prior: Prior,
): SlipModel {
  const first = slipOf(pairs, course, prior);
  // What comes late was partly driven before the pull: once the lag is known that part is left out.
  return Math.abs(first.lag) > 0.03 ? slipOf(pairsOf(engine, road, first.lag), course, prior) : first;
}

/** The samples of a road speed that came late by so much [s], set on time, those inside the table. */
function onTimeOf(table: CurveTable, road: SpeedSignal, lag: number): SpeedSignal {
  const time = road.time.slice();
  for (let i = 0; i < time.length; i++) time[i] = (time[i] as number) - lag;
  const first = table.time[0] as number;
  const last = table.time.at(-1) as number;
  let from = 0;
  let to = time.length;
  while (from < to && (time[from] as number) < first) from++;
  while (to > from && (time[to - 1] as number) > last) to--;
  return { ...road, time: time.subarray(from, to), value: road.value.subarray(from, to) };
}

/** Distance per radian as the two speeds have it in the middle, slip and all. */
function usualDistance(table: CurveTable, road: SpeedSignal): number {
  const { time, value } = onTimeOf(table, road, 0);
  const ratios = new Float64Array(time.length);
  for (let i = 0; i < ratios.length; i++) ratios[i] = table.valueAt(time[i] as number) / (value[i] as number);
  return 1 / median(ratios);
}

/**
 * Neighbours over so long that their mean shows a common error [s]: shorter than a bend that matters, and beside the
 * beats of usual logs, so that no rounding of a lag decides whether another row belongs to it.
 */
const stretch = 0.3995;
/** Means of a signal with noise of its own alone scatter by no more than so many times what they should. */
const usualExcess = 3;

/**
 * Noise of a road speed as the shape of a pull sees it. Samples of a smoothed, interpolated or late channel err together:
 * where their means over a stretch stray from engine speed by more than both noises allow, each counts for less.
 */
function shapeNoise(
  road: SpeedSignal,
  engine: SpeedSignal,
  table: CurveTable,
  { distance, slip }: SlipModel,
  share: (time: number) => number,
): number {
  const first = road.time[0] as number;
  let squares = 0;
  let stretches = 0;
  let samples = 0;
  for (let i = 0; i < road.time.length; ) {
    const start = road.time[i] as number;
    let sum = 0;
    let count = 0;
    for (; i < road.time.length && (road.time[i] as number) - start < stretch; i++) {
      const t = road.time[i] as number;
      sum += (road.value[i] as number) - (distance * table.valueAt(t)) / (1 + slip * share(t));
      count++;
    }
    squares += (sum / count) ** 2;
    samples += count;
    stretches++;
  }
  if (stretches < 3) return road.noise;
  const own = (road.noise ** 2 * stretches) / samples;
  const perStretch = (engine.time.length * stretch) / ((engine.time.at(-1) as number) - first);
  const engines = (engine.noise * distance) ** 2 / Math.max(1, perStretch);
  const found = squares / stretches;
  if (found < usualExcess * (own + engines)) return road.noise;
  return Math.sqrt(((found - engines) * samples) / stretches);
}

/** Both speeds at instants of the pull, but for the force that drove it then. */
type TimedPairs = Omit<SpeedPairs, 'force'> & { readonly time: Float64Array };

/** @param lag  what is known of it so far [s] */
function pairsOf({ table, at, noise }: EngineRead, road: SpeedSignal, lag: number): TimedPairs {
  const onTime = onTimeOf(table, road, lag);
  const count = onTime.time.length;
  const pairs = {
    time: new Float64Array(count),
    ratio: new Float64Array(count),
    growth: new Float64Array(count),
    noise: new Float64Array(count),
  };
  const around = 0.05;
  for (let i = 0; i < count; i++) {
    const t = (onTime.time[i] as number) + lag;
    const v = onTime.value[i] as number;
    const rise = (table.valueAt(t + around) - table.valueAt(t - around)) / (2 * around);
    const ratio = at(t) / v;
    pairs.time[i] = t;
    pairs.ratio[i] = ratio;
    pairs.growth[i] = rise / (ratio * v);
    pairs.noise[i] = Math.hypot(road.noise, noise / ratio) / v;
  }
  return pairs;
}

function slipOf(pairs: TimedPairs, course: Course, { usualLag, nominal }: Prior): SlipModel {
  const force = new Float64Array(pairs.time.length);
  for (let i = 0; i < force.length; i++) force[i] = course.share(pairs.time[i] as number);
  return fitSlip({ ...pairs, force }, usualLag, nominal);
}

/**
 * Engine speed between its samples. A smooth table of it strays where torque comes in, the same way in every pull, and
 * that would pass for a lag: so what the samples around stray from the table is given back.
 */
type EngineRead = {
  readonly table: CurveTable;
  readonly at: (time: number) => number;
  /** Standard deviation of one sample [rad/s]. */
  readonly noise: number;
};

function engineRead(engine: SpeedSignal): EngineRead {
  const table = tableOf(engine);
  const { time, value, noise } = engine;
  const stray = new Float64Array(value.length);
  for (let i = 0; i < stray.length; i++) stray[i] = (value[i] as number) - table.valueAt(time[i] as number);
  const at = (t: number) => {
    const i = Math.min(time.length - 2, Math.max(0, indexAt(time, t, 0, time.length) - 1));
    const from = time[i] as number;
    const u = Math.min(1, Math.max(0, (t - from) / ((time[i + 1] as number) - from)));
    return table.valueAt(t) + (1 - u) * (stray[i] as number) + u * (stray[i + 1] as number);
  };
  return { table, at, noise };
}

export function tableOf(signal: SpeedSignal): CurveTable {
  return coarseTable([signal], signal.time);
}

function coarseTable(signals: readonly SpeedSignal[], time: Float64Array): CurveTable {
  const estimator = slopeEstimator(samplesOf(signals), 'coarse');
  return curveTable(estimator.along, time[0] as number, time.at(-1) as number, tableStep);
}

/** Engine speed as the road speed it makes over a fixed distance per radian. */
export function scaled({ time, curve }: CurveTable, distance: number): Along {
  const times = (values: Float64Array) => {
    const out = values.slice();
    for (let i = 0; i < out.length; i++) out[i] = distance * (out[i] as number);
    return out;
  };
  return { time, curve: { value: times(curve.value), slope: times(curve.slope) } };
}

/** Speed and acceleration at even instants. */
type Along = { readonly time: Float64Array; readonly curve: SlopeCurve };

/** Tractive force [N] at each instant of a curve. */
export function forcesAlong({ value, slope }: SlopeCurve, forceAt: ForceAt): Float64Array {
  const forces = new Float64Array(value.length);
  for (let i = 0; i < forces.length; i++) forces[i] = forceAt(value[i] as number, slope[i] as number);
  return forces;
}

/** Tractive force through a pull. */
export type Course = {
  /** The largest [N]. */
  readonly peak: number;
  /** Force over the largest, at an instant. */
  readonly share: (time: number) => number;
};

export function courseOf(road: Along, forceAt: ForceAt): Course {
  const forces = forcesAlong(road.curve, forceAt);
  // The ends are the noisiest: the peak is not looked for there.
  const peak = rangeWithin(forces, 2, forces.length - 2).high;
  const first = road.time[0] as number;
  const step = (road.time[1] as number) - first;
  const share = (t: number) => {
    const x = Math.min(forces.length - 1, Math.max(0, (t - first) / step));
    const i = Math.min(forces.length - 2, Math.floor(x));
    const f = (forces[i] as number) + (x - i) * ((forces[i + 1] as number) - (forces[i] as number));
    return peak > 0 ? Math.min(1.1, Math.max(0, f / peak)) : 0;
  };
  return { peak, share };
}

/**
 * Engine speed as a road speed whose driven tyres slip in proportion to their force. That force holds what speeds the
 * car up, so a sample reads more than the speed:
 *
 *   d w = v (1 + s F(v, a) / Fmax) = v + s v F(v, 0) / Fmax + (s v m / Fmax) a
 *
 * The middle part is taken off, the last is the sample's lead.
 */
export function asRoadSpeed(
  engine: SpeedSignal,
  { distance, slip }: { readonly distance: number; readonly slip: number },
  peak: number,
  forceAt: ForceAt,
): SpeedSignal {
  const value = new Float64Array(engine.value.length);
  const lead = new Float64Array(engine.value.length);
  const perForce = peak > 0 ? slip / peak : 0;
  for (let i = 0; i < value.length; i++) {
    const read = distance * (engine.value[i] as number);
    // Slip is a small thing: in its own size it may be left out of the speed.
    const resting = forceAt(read, 0);
    value[i] = read * (1 - perForce * resting);
    lead[i] = perForce * read * (forceAt(read, 1) - resting);
  }
  return { ...engine, value, lead, noise: engine.noise * distance };
}
