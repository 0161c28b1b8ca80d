import { momentsOf, momentTable } from './foot-fit.ts';
import { medianOf } from './median.ts';
import { indexAt } from './speed-ratio.ts';
import { kneeTime, lineThrough } from './steady-rise.ts';
import type { EndedSpan, Span } from './time-axis.ts';

/** A span of rising engine speed, and the stretch of gapless log it lies in. */
export type Rise = Span & {
  readonly segment: Span;
  /** Parted by the foot from the rise before it, so the two are not one. */
  readonly isOwnMove: boolean;
};

/** The foot takes this long to lift; the knee lies in the middle (common practice). */
const halfLift_s = 0.1;
/** What a driveline that swings and a logger's steps leave over beside the model [rad/s] (common practice). */
const startMisfit = 2.5;
const liftMisfit = 1;
/** From the knee to the stop of the pedal, on the middle of quick and slow feet (common practice). */
const kneeToFull_s = 0.1;

/**
 * Moves the ends of a rise to where the foot met the stop and left it, or to the gear change beside it.
 *
 * @param highest  top of the highest rise of the log, where a limiter may stand [rad/s]
 */
export function withEnds(
  engineSpeed: Float64Array,
  time: Float64Array,
  rise: Rise,
  highest: number,
): EndedSpan {
  const { segment } = rise;
  const start = time[rise.from] ?? 0;
  const end = time[rise.to - 1] ?? 0;
  let from = rise.from;
  let startWithin_s = 0;
  let endWithin_s = 0;
  const lowest = shiftBefore(engineSpeed, time, rise);
  if (lowest !== null) {
    // The box changes under full throttle and pulls at once; a foot has to come down again first.
    const until = indexAt(time, (time[lowest] ?? 0) + 0.3, lowest, rise.to);
    const { slope } = lineThrough(engineSpeed, time, lowest, until, 0);
    from = slope > 0.6 * usualSlope(engineSpeed, time, rise) ? lowest : Math.max(lowest, rise.from);
  } else if (start - (time[segment.from] ?? 0) < 0.4) from = segment.from;
  else {
    const knee = kneeTime(engineSpeed, time, segment, {
      from_s: start - 0.6,
      to_s: start + 0.5,
      before_s: 0.5,
      after_s: 0.4,
      turn: 1,
    });
    const table = momentTable(engineSpeed, time, segment, {
      way: 'down',
      as: 'speed',
      from_s: knee - 0.2,
      to_s: knee + 0.2,
      before_s: 0.3,
      after_s: 0.4,
      noise: startMisfit,
    });
    const moment = momentsOf([table])[0];
    startWithin_s = moment?.within_s ?? 0;
    from = indexAt(time, moment?.at_s ?? knee + kneeToFull_s, segment.from, segment.to);
  }
  let to = rise.to;
  const peak = shiftAfter(engineSpeed, time, rise);
  if (peak !== null) to = peak + 1;
  else if ((time[segment.to - 1] ?? 0) - end < 0.4) to = segment.to;
  else {
    const held = heldOnLimiter(engineSpeed, time, rise, highest);
    const lift = held === null ? liftTime(engineSpeed, time, segment, end) : { at_s: held, within_s: 0 };
    endWithin_s = lift.within_s;
    to = Math.max(from + 1, indexAt(time, lift.at_s + 1e-9, segment.from, segment.to));
  }
  return { from, to, startWithin_s, endWithin_s };
}

/** Last moment before the foot lifts near `end`. */
function liftTime(
  engineSpeed: Float64Array,
  time: Float64Array,
  segment: Span,
  end: number,
): { at_s: number; within_s: number } {
  const knee = kneeTime(engineSpeed, time, segment, {
    from_s: end - 0.4,
    to_s: end + 0.5,
    before_s: 0.4,
    after_s: 0.3,
    turn: -1,
  });
  const table = momentTable(engineSpeed, time, segment, {
    way: 'lift',
    as: 'speed',
    from_s: knee - 0.2,
    to_s: knee + 0.2,
    before_s: 0.4,
    after_s: 0.3,
    noise: liftMisfit,
  });
  return momentsOf([table])[0] ?? { at_s: knee - halfLift_s, within_s: 0 };
}

/** Mean slope of the rise's first second. */
function usualSlope(engineSpeed: Float64Array, time: Float64Array, rise: Rise): number {
  const to = indexAt(time, (time[rise.from] ?? 0) + 1, rise.from, rise.to);
  return lineThrough(engineSpeed, time, rise.from, to, 0).slope;
}

/** A car that rolls out of a pull slows by more than this share of its engine speed per second (common practice). */
const rollOutSlope = 0.012;
/** A foot that lifts turns engine speed round within this time; longer, and the limiter held it [s]. */
const longestTurn_s = 0.28;
/** Nobody stays on the limiter for longer [s] (common practice). */
const longestHold_s = 3;
/** The bends at both ends of the level are no part of it [s]. */
const bend_s = 0.07;
/** Held engine speed changes by less than this share of itself per second; noise is no slope. */
const levelSlope = 0.009;
/** On the limiter only the last of the foot's travel shows: it began so long before [s] (common practice). */
const unseenLift_s = 0.2;
/** The limiter stands where the highest rise of the log ends, but for noise. */
const nearHighest = 0.98;

/**
 * Last moment before the foot lifts where engine speed stands level at the top, held by the limiter; null where it
 * turns down at once. The best of all courses of three lines, up, level and down, tells for how long it stood.
 */
function heldOnLimiter(
  engineSpeed: Float64Array,
  time: Float64Array,
  rise: Rise,
  highest: number,
): number | null {
  const { segment } = rise;
  const start = time[rise.to - 1] ?? 0;
  const soon = indexAt(time, start + 0.3, rise.to, segment.to);
  const top = medianOf(engineSpeed, Math.min(rise.to, soon - 3), soon);
  if (top < nearHighest * highest) return null;
  let i = rise.to;
  const longest = indexAt(time, start + longestHold_s, rise.to, segment.to);
  while (i < longest && !(Math.abs((engineSpeed[i] ?? 0) / top - 1) > 0.02)) i++;
  // Engine speed that stands for longer is no limiter but a steady drive.
  if (i === longest && longest < segment.to) return null;
  const out = time[Math.max(rise.to, i - 1)] ?? 0;
  if (out - start <= 0.3) return null;
  const from = indexAt(time, start - 0.4, segment.from, segment.to);
  const to = indexAt(time, out + 0.2, from, segment.to);
  let held = { from: start, to: start };
  let least = Number.POSITIVE_INFINITY;
  for (let a = start - 0.2; a <= start + 0.3; a += 0.025)
    for (let b = a; b <= out + 0.1; b += 0.025) {
      const { error, up, down } = levelBetween(engineSpeed, time, from, to, a, b);
      if (error < least && up > 0 && down < -rollOutSlope * top) {
        least = error;
        held = { from: a, to: b };
      }
    }
  if (held.to - held.from <= longestTurn_s) return null;
  const a = indexAt(time, held.from + bend_s, from, to);
  const b = indexAt(time, held.to - bend_s, a, to);
  const level = lineThrough(engineSpeed, time, a, b, held.from);
  return Math.abs(level.slope) < levelSlope * top ? held.to - unseenLift_s : null;
}

/** Squared error and slopes [unit per second] of the best course that is level from `a` to `b`. */
function levelBetween(
  values: Float64Array,
  time: Float64Array,
  from: number,
  to: number,
  a: number,
  b: number,
): { error: number; up: number; down: number } {
  let [n, su, sd, suu, sdd, sv, suv, sdv, svv] = [0, 0, 0, 0, 0, 0, 0, 0, 0];
  const base = values[from] ?? 0;
  for (let i = from; i < to; i++) {
    const v = (values[i] ?? Number.NaN) - base;
    if (Number.isNaN(v)) continue;
    const t = time[i] ?? 0;
    const u = Math.min(0, t - a);
    const d = Math.max(0, t - b);
    n++;
    su += u;
    sd += d;
    suu += u * u;
    sdd += d * d;
    sv += v;
    suv += u * v;
    sdv += d * v;
    svv += v * v;
  }
  // No sample lies on both slopes, so only their means tie the two.
  const [uu, dd, ud] = [suu - (su * su) / n, sdd - (sd * sd) / n, (-su * sd) / n];
  const [uv, dv] = [suv - (su * sv) / n, sdv - (sd * sv) / n];
  const det = uu * dd - ud * ud;
  if (!(det > 1e-12)) return { error: Number.POSITIVE_INFINITY, up: 0, down: 0 };
  const up = (uv * dd - dv * ud) / det;
  const down = (dv * uu - uv * ud) / det;
  return { error: svv - (sv * sv) / n - up * uv - down * dv, up, down };
}

/**
 * Sample of the highest engine speed where a gear change follows the rise at once: engine speed then falls by 8 %
 * within half a second, faster than any car slows in gear. Null where none follows.
 */
function shiftAfter(engineSpeed: Float64Array, time: Float64Array, rise: Rise): number | null {
  const a = indexAt(time, (time[rise.to - 1] ?? 0) - 0.3, rise.from, rise.segment.to);
  const b = indexAt(time, (time[rise.to - 1] ?? 0) + 0.4, a, rise.segment.to);
  let top = a;
  for (let i = a; i < b; i++) if ((engineSpeed[i] ?? 0) > (engineSpeed[top] ?? 0)) top = i;
  const c = indexAt(time, (time[top] ?? 0) + 0.5, top, rise.segment.to);
  for (let i = top; i < c; i++) if ((engineSpeed[i] ?? 0) < 0.92 * (engineSpeed[top] ?? 0)) return top;
  return null;
}

/** Sample of the lowest engine speed where a gear change leads into the rise; null where none does. */
function shiftBefore(engineSpeed: Float64Array, time: Float64Array, rise: Rise): number | null {
  const a = indexAt(time, (time[rise.from] ?? 0) - 0.6, rise.segment.from, rise.segment.to);
  const b = indexAt(time, (time[rise.from] ?? 0) + 0.2, a, rise.segment.to);
  let low = b;
  for (let i = b; i >= a; i--) if ((engineSpeed[i] ?? 0) < (engineSpeed[low] ?? 0)) low = i;
  const c = indexAt(time, (time[low] ?? 0) - 0.5, rise.segment.from, low);
  for (let i = c; i < low; i++) if ((engineSpeed[i] ?? 0) > 1.08 * (engineSpeed[low] ?? 0)) return low;
  return null;
}
