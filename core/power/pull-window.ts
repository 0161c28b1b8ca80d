import { type Channel, channelOf, type Log, medianOf, type Pull } from '../log/index.ts';
import { climbEnd } from './climb-end.ts';
import { leapAtEnd } from './leap-at-end.ts';

/** Where power is told, [from, to), and which samples around it may be used by the smoother. */
export type PullWindow = {
  readonly from: number;
  readonly to: number;
  readonly useFrom: number;
  readonly useTo: number;
  /** Seconds at either end of the pull in which speed fell or stood, left out. */
  readonly trimmed: number;
};

/**
 * The part of a pull in which speed rises, and the samples before and after it that were still at full throttle
 * (a pull that a person has trimmed), up to one second either side. Without pedal or throttle in the log nothing
 * outside the pull is used.
 */
export function pullWindow(log: Log, pull: Pull, speed: Channel): PullWindow {
  let { from } = pull;
  const driven = leapAtEnd(log.time, speed.values, from, pull.to);
  let to = driven;
  const at = (i: number) => log.time[i] as number;
  // A lift or shift that slipped into the window shows as speed past its highest or before its lowest.
  const middle = (from + to) >> 1;
  const smooth = medianOfThree(speed.values, from, to);
  const high = from + extreme(smooth, middle - from, to - from, 1);
  const low = from + extreme(smooth, 0, middle - from, -1);
  const level = (i: number) => smooth[i - from] as number;
  const before = at(pull.to - 1) - at(from);
  const time = log.time.subarray(from, to);
  const climbs = from + climbEnd(time, smooth);
  const isHeld = climbs < to;
  if (isHeld) to = climbs;
  else if (level(high) > level(to - 1)) {
    const upTo = high + 1 - from;
    to = from + climbEnd(time.subarray(0, upTo), smooth.subarray(0, upTo));
  }
  if (level(low) < level(from)) from = low;
  const lost = before - (at(to - 1) - at(from));
  // A sample or two go to noise; more is a lift or a shift that got into the pull.
  const trimmed = lost > 0.12 ? lost : 0;
  const throttle = channelOf(log, 'pedal') ?? channelOf(log, 'throttle');
  const segment = log.segments.find((s) => s.from <= from && from < s.to) ?? { from, to };
  let useFrom = from;
  let useTo = to;
  if (throttle && trimmed === 0 && !isHeld && driven === pull.to) {
    const full = 0.97 * throttleLevel(throttle, from, to);
    while (
      useFrom > segment.from &&
      at(from) - at(useFrom - 1) <= 1 &&
      throttleAt(throttle, useFrom - 1) >= full
    )
      useFrom--;
    while (useTo < segment.to && at(useTo) - at(to - 1) <= 1 && throttleAt(throttle, useTo) >= full) useTo++;
  }
  // Full throttle outside the pull may still be another gear or the limiter: speed must rise all the way.
  while (useFrom < from && !risesFrom(speed.values, useFrom, from)) useFrom++;
  while (useTo > to && !risesFrom(speed.values, to - 1, useTo - 1)) useTo--;
  return { from, to, useFrom, useTo, trimmed };
}

/** The manifold fills and the driveline winds up while the pedal already stands at its stop [s] (common practice). */
const settling_s = 0.15;
/** A slope on the rise of boost takes so many intervals to its one side. */
const leastIntervals = 2.5;
/** However slow the log, no more of a pull than this is left out. */
const mostLeftOut = 0.25;
/** Clutch and torque are back so long after a gear change [s] (common practice). */
const afterChange_s = 0.4;

/**
 * First moment of a pull at which its power is told [s].
 *
 * With nothing at full throttle before it a pull's first moments have samples on one side only. There the slope is
 * off by 5 % on a steep onset at 20 Hz and by 10 % at 10 Hz, and is no power of the engine yet either. Samples
 * before the pull would mend it if speed at its start were known to 0.02 m/s; where in its interval the foot came
 * down leaves 0.04 to 0.07.
 *
 * @param interval  usual time between readings [s]
 */
export function toldFrom(log: Log, window: PullWindow, interval: number): number {
  const at = (i: number) => log.time[i] as number;
  const start = at(window.from);
  const left = Math.max(settling_s, leastIntervals * interval) - (start - at(window.useFrom));
  return leavingOut(left, log, window);
}

/** The instant by which a pull's power is told, whatever stands before it [s]. */
export function latestTold(log: Log, window: PullWindow): number {
  return leavingOut(afterChange_s, log, window);
}

function leavingOut(seconds: number, log: Log, { from, to }: PullWindow): number {
  const start = log.time[from] as number;
  const most = mostLeftOut * ((log.time[to - 1] as number) - start);
  return start + Math.max(0, Math.min(seconds, most));
}

function throttleAt(channel: Channel, i: number): number {
  const value = channel.values[i] as number;
  return Number.isFinite(value) ? value : Number.NEGATIVE_INFINITY;
}

function throttleLevel(channel: Channel, from: number, to: number): number {
  const level = medianOf(channel.values, from, to);
  return Number.isNaN(level) ? Number.POSITIVE_INFINITY : level;
}

function extreme(values: Float64Array, from: number, to: number, sign: 1 | -1): number {
  let best = from;
  for (let i = from; i < to; i++) {
    const better = sign * (values[i] as number) - sign * (values[best] as number);
    if (better > 0 || !Number.isFinite(values[best])) best = i;
  }
  return best;
}

/**
 * Median of a reading and the ones before and after it: one spike must not pass for the top of the pull. Repeats of
 * a reading are passed over, since a spike that the file writes twice is no better proven; gaps take the number
 * before them.
 */
function medianOfThree(values: Float64Array, from: number, to: number): Float64Array {
  const filled = values.slice(from, to);
  for (let i = 1; i < filled.length; i++)
    if (!Number.isFinite(filled[i])) filled[i] = filled[i - 1] as number;
  const out = new Float64Array(filled.length);
  for (let start = 0; start < filled.length; ) {
    const x = filled[start] as number;
    let end = start + 1;
    while (end < filled.length && filled[end] === x) end++;
    const a = start > 0 ? (filled[start - 1] as number) : x;
    const b = end < filled.length ? (filled[end] as number) : x;
    const middle = Math.max(Math.min(a, x), Math.min(b, Math.max(a, x)));
    for (; start < end; start++) out[start] = middle;
  }
  return out;
}

/** Every sample between the two lies above the one and below the other: one smooth rise. */
function risesFrom(values: Float64Array, from: number, to: number): boolean {
  const a = values[from] as number;
  const b = values[to] as number;
  if (!(b > a)) return false;
  for (let i = from + 1; i < to; i++) {
    const x = values[i] as number;
    if (Number.isFinite(x) && (x < a - 0.01 * b || x > b * 1.01)) return false;
  }
  return true;
}
