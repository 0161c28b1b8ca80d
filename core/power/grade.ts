import { type Channel, channelOf, type Log } from '../log/index.ts';
import type { Note } from '../result/index.ts';
import type { Conditions } from './conditions.ts';
import { inputUncertainty, standardGravity } from './practice.ts';
import type { PullWindow } from './pull-window.ts';

/** Slope as rise per distance, uphill positive, null where nobody knows it, with its standard uncertainty. */
export type GradeOfPull = {
  readonly grade: number | null;
  readonly uncertainty: number;
  readonly notes: readonly Note[];
};

/** A satellite's height wanders by a metre within a pull, a barometer's with weather and gusts (common practice) [m]. */
const wander = 1;
/** A barometer feels the car's own wind: some hundredths of its dynamic pressure (from memory). */
const ownWind = 0.015;
/** Satellite heights reach a log late by up to two seconds (common practice); root mean square [s]. */
const lateness = 1;
/** Seconds before and after a pull in which the height shows whether it goes with speed. */
const [before_s, after_s] = [10, 15];
/** Readings that can be: roads from the shores of inland seas to the highest passes [m], and speeds of cars [m/s]. */
const heights = [-500, 6000] as const;
const fastest = 150;
/** No pull is shorter, and a height tells no slope over less [m]. */
const leastLength = 10;
/** Speed must fall again by this much behind the pull to tell speed from distance [m/s]. */
const leastFall = 5;

/**
 * Slope of the road under a pull: as entered, else from the altitude channel where that clearly shows one, else
 * unknown.
 *
 * Altitude is fitted by one straight line over distance. It counts only beyond two of its standard errors, which
 * hold more than its scatter, as if ten rows in a row erred together: height that wanders for reasons of its own,
 * one that comes late while the car gains speed (a share a t / v of the slope), and a barometer's that rises with the
 * car's own wind. What goes with speed rather than distance in the seconds around the pull is no road, and not used.
 * Where the altitude is unclear the road is taken as level, and the slope that it seems to show is the uncertainty of that.
 * An altitude that never changes says nothing, and one whose unit nothing tells is not used: feet taken for metres are
 * 3.3 times the slope.
 */
export function gradeOfPull(log: Log, window: PullWindow, conditions: Conditions): GradeOfPull {
  const { gradeAssumed, gradeGiven } = inputUncertainty;
  if (conditions.grade_percent !== null)
    return { grade: conditions.grade_percent / 100, uncertainty: gradeGiven, notes: [] };
  if (conditions.place === 'dyno') return { grade: 0, uncertainty: 0, notes: [] };
  const unknown = { grade: null, uncertainty: gradeAssumed };
  const altitude = channelOf(log, 'altitude');
  const speed = channelOf(log, 'gpsSpeed') ?? channelOf(log, 'vehicleSpeed');
  if (!altitude || !speed) return { ...unknown, notes: [] };
  const { xs, ys, vs } = heightsAlong(log, altitude, speed, window.from, window.to);
  const length = (xs.at(-1) ?? 0) - (xs[0] ?? 0);
  if (xs.length < 10 || length < leastLength) return { ...unknown, notes: [] };
  if (ys.every((y) => y === ys[0]))
    return { ...unknown, notes: [{ code: 'power/altitude-stands-still', facts: {} }] };
  const line = straightLine(xs, ys);
  const grade = Math.tan(Math.asin(Math.max(-0.5, Math.min(0.5, line.slope))));
  const [first, last] = [vs[0] as number, vs.at(-1) as number];
  const share = shareOfHead(log, altitude, speed, window);
  if (share > 0) {
    // What the car's own wind makes of a level road; the road's own slope may hide in it with either sign.
    const own = (share * (last * last - first * first)) / (2 * standardGravity * length);
    return {
      grade: null,
      uncertainty: Math.max(gradeAssumed, Math.abs(grade), Math.abs(grade - own)),
      notes: [{ code: 'power/altitude-with-speed', facts: { grade } }],
    };
  }
  const { column, unit, reason } = altitude;
  if (reason?.code === 'log/column-by-values')
    return {
      grade: null,
      uncertainty: Math.max(gradeAssumed, Math.abs(grade)),
      notes: [{ code: 'power/altitude-unit-untold', facts: { column, unit, grade } }],
    };
  const late = (grade * lateness * Math.max(0, last - first)) / length;
  // rho v^2 / 2 over rho g is a height.
  const wind = (ownWind * Math.abs(last * last - first * first)) / (2 * standardGravity * length);
  const scatter = line.error * Math.sqrt(Math.min(10, xs.length / 4));
  const error = Math.hypot(scatter, wander / length, late, wind);
  if (!(Math.abs(grade) > 2 * error))
    return {
      grade: null,
      uncertainty: Math.max(gradeAssumed, Math.abs(grade)),
      notes: [{ code: 'power/altitude-unclear', facts: { grade, error } }],
    };
  return {
    grade,
    uncertainty: error,
    notes: [{ code: 'power/grade-from-altitude', facts: { grade, error } }],
  };
}

/** Distance, height and speed of the rows that have a height which can be. */
function heightsAlong(log: Log, altitude: Channel, speed: Channel, from: number, to: number) {
  const [xs, ys, vs]: [number[], number[], number[]] = [[], [], []];
  let distance = 0;
  let v = 0;
  for (let i = from; i < to; i++) {
    const read = speed.values[i] as number;
    // Between the readings of a slow speed the car keeps on.
    if (read >= 0 && read <= fastest) v = read;
    if (i > from) distance += v * ((log.time[i] as number) - (log.time[i - 1] as number));
    const height = altitude.values[i] as number;
    if (!(height >= heights[0] && height <= heights[1])) continue;
    xs.push(distance);
    ys.push(height);
    vs.push(v);
  }
  return { xs, ys, vs };
}

/**
 * By how much of v^2 / 2g the height follows the car's own wind, 0 where it does not: over the pull and the seconds around it, in which speed falls again
 * while distance runs on, it rises with v^2 / 2g besides distance: beyond three of its standard errors, and by twice what
 * is allowed for and more. A height that comes late on a way down looks a little like it.
 */
function shareOfHead(log: Log, altitude: Channel, speed: Channel, window: PullWindow): number {
  const segment = log.segments.find((s) => s.from <= window.from && window.from < s.to);
  if (!segment) return 0;
  let { from, to } = window;
  const at = (i: number) => log.time[i] as number;
  while (from > segment.from && at(window.from) - at(from - 1) <= before_s) from--;
  while (to < segment.to && at(to) - at(window.to - 1) <= after_s) to++;
  const { xs, ys, vs } = heightsAlong(log, altitude, speed, from, to);
  if (Math.max(...vs) - (vs.at(-1) ?? 0) < leastFall) return 0;
  const heads = vs.map((v) => (v * v) / (2 * standardGravity));
  // What distance explains is taken off both, and what is left is held against each other.
  const left = (values: readonly number[]) => {
    const { slope, intercept } = straightLine(xs, values);
    return values.map((y, i) => y - intercept - slope * (xs[i] as number));
  };
  const { slope, error } = straightLine(left(heads), left(ys));
  const isClear = slope > 3 * error * Math.sqrt(Math.min(10, xs.length / 4)) && slope > 2 * ownWind;
  return isClear ? slope : 0;
}

/** Least squares y = a + slope x with the standard error of the slope. */
export function straightLine(xs: readonly number[], ys: readonly number[]) {
  const n = xs.length;
  const mx = xs.reduce((a, b) => a + b, 0) / n;
  const my = ys.reduce((a, b) => a + b, 0) / n;
  let sxx = 0;
  let sxy = 0;
  for (let i = 0; i < n; i++) {
    sxx += ((xs[i] as number) - mx) ** 2;
    sxy += ((xs[i] as number) - mx) * ((ys[i] as number) - my);
  }
  const slope = sxy / sxx;
  const intercept = my - slope * mx;
  let squares = 0;
  for (let i = 0; i < n; i++) squares += ((ys[i] as number) - intercept - slope * (xs[i] as number)) ** 2;
  return { slope, intercept, error: Math.sqrt(squares / Math.max(1, n - 2) / sxx) };
}
