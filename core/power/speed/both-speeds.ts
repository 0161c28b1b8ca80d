import { median } from '../../log/index.ts';
import { samplesOf } from '../gather.ts';
import { type CurveTable, curveTable } from '../smoothing/curve-table.ts';
import { slopeEstimator } from '../smoothing/slope-estimate.ts';
import { fitSlip, type Nominal, type SlipModel, type SpeedPairs } from './slip.ts';
import type { SpeedSignal } from './speed-signal.ts';

/** Tractive force [N] over road speed [m/s] and acceleration [m/s^2]. */
export type ForceAt = (speed: number, acceleration: number) => number;

/** Step of the tables [s]: half of the narrowest kernel. */
const tableStep = 0.1;

/** One estimator from both speeds. */
export function together(
  engine: SpeedSignal,
  road: SpeedSignal,
  usualLag: number,
  nominal: Nominal | null,
  forceAt: ForceAt,
) {
  const table = tableOf(engine);
  let believed = road;
  let model = modelOf(table, road, usualLag, nominal, forceAt);
  let share = forceShare(table, model.distance, forceAt);
  let onTime = within(table, { ...road, time: road.time.map((t) => t - model.lag) });
  const noise = shapeNoise(onTime, engine, table, model, share);
  if (noise > road.noise) {
    // Its scale is no better known than its shape: gear and tyre may say more.
    believed = { ...road, noise };
    model = modelOf(table, believed, usualLag, nominal, forceAt);
    share = forceShare(table, model.distance, forceAt);
    onTime = within(table, { ...believed, time: road.time.map((t) => t - model.lag) });
  }
  const converted = asRoadSpeed(engine, model.distance, model.slip, share);
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

function modelOf(
  table: CurveTable,
  road: SpeedSignal,
  usualLag: number,
  nominal: Nominal | null,
  forceAt: ForceAt,
): SlipModel {
  const first = slipOf(table, road, usualLag, nominal, forceAt, 0);
  // What comes late was partly driven before the pull: once the lag is known that part is left out.
  return Math.abs(first.lag) > 0.03 ? slipOf(table, road, usualLag, nominal, forceAt, first.lag) : first;
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

/** The samples whose time lies inside the table. */
function within(table: CurveTable, signal: SpeedSignal): SpeedSignal {
  const first = table.time[0] as number;
  const last = table.time.at(-1) as number;
  let from = 0;
  let to = signal.time.length;
  while (from < to && (signal.time[from] as number) < first) from++;
  while (to > from && (signal.time[to - 1] as number) > last) to--;
  return { ...signal, time: signal.time.subarray(from, to), value: signal.value.subarray(from, to) };
}

/** @param lag  what is known of it so far [s] */
function slipOf(
  engine: CurveTable,
  road: SpeedSignal,
  usualLag: number,
  nominal: Nominal | null,
  forceAt: ForceAt,
  lag: number,
): SlipModel {
  const onTime = within(engine, { ...road, time: road.time.map((t) => t - lag) });
  const count = onTime.time.length;
  const pairs: SpeedPairs = {
    ratio: onTime.value.map((v, i) => engine.valueAt((onTime.time[i] as number) + lag) / v),
    force: new Float64Array(count),
    growth: new Float64Array(count),
    noise: new Float64Array(count),
  };
  const share = forceShare(engine, 1 / median(pairs.ratio), forceAt);
  const around = 0.05;
  for (let i = 0; i < count; i++) {
    const t = (onTime.time[i] as number) + lag;
    const v = onTime.value[i] as number;
    const rise = (engine.valueAt(t + around) - engine.valueAt(t - around)) / (2 * around);
    pairs.force[i] = share(t);
    pairs.growth[i] = rise / ((pairs.ratio[i] as number) * v);
    pairs.noise[i] = road.noise / v;
  }
  return fitSlip(pairs, usualLag, nominal);
}

export function tableOf(signal: SpeedSignal): CurveTable {
  const estimator = slopeEstimator(samplesOf([signal]), 'coarse');
  return curveTable(estimator.along, signal.time[0] as number, signal.time.at(-1) as number, tableStep);
}

/** Tractive force over its peak, from engine speed alone: slip is a small thing and may be left out here. */
export function forceShare(engine: CurveTable, distance: number, forceAt: ForceAt): (time: number) => number {
  const forces = engine.curve.value.map((w, i) =>
    forceAt(w * distance, (engine.curve.slope[i] as number) * distance),
  );
  // The ends are the noisiest: the peak is not looked for there.
  const peak = Math.max(...forces.subarray(2, -2));
  const first = engine.time[0] as number;
  const step = (engine.time[1] as number) - first;
  return (t) => {
    const x = Math.min(forces.length - 1, Math.max(0, (t - first) / step));
    const i = Math.min(forces.length - 2, Math.floor(x));
    const f = (forces[i] as number) + (x - i) * ((forces[i + 1] as number) - (forces[i] as number));
    return peak > 0 ? Math.min(1.1, Math.max(0, f / peak)) : 0;
  };
}

export function asRoadSpeed(
  engine: SpeedSignal,
  distance: number,
  slip: number,
  share: (time: number) => number,
): SpeedSignal {
  const value = engine.value.map((w, i) => (distance * w) / (1 + slip * share(engine.time[i] as number)));
  return { ...engine, value, noise: engine.noise * distance };
}
