import { medianOf } from './median.ts';
import { indexAt } from './speed-ratio.ts';
import { kneeTime, lineThrough } from './steady-rise.ts';
import type { Span } from './time-axis.ts';

/** A span of rising engine speed, and the stretch of gapless log it lies in. */
export type Rise = Span & {
  readonly segment: Span;
  /** Parted by the foot from the rise before it, so the two are not one. */
  readonly isOwnMove: boolean;
};

/** The foot takes this long to lift; the knee lies in the middle (common practice). */
const halfLift_s = 0.1;
/** From the knee to the stop of the pedal, on the middle of quick and slow feet (common practice). */
const kneeToFull_s = 0.1;

/** Moves the ends of a rise to where the foot met the stop and left it, or to the gear change beside it. */
export function withEnds(engineSpeed: Float64Array, time: Float64Array, rise: Rise): Span {
  const { segment } = rise;
  const start = time[rise.from] ?? 0;
  const end = time[rise.to - 1] ?? 0;
  let from = rise.from;
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
    from = indexAt(time, knee + kneeToFull_s, segment.from, segment.to);
  }
  let to = rise.to;
  const highest = shiftAfter(engineSpeed, time, rise);
  if (highest !== null) to = highest + 1;
  else if ((time[segment.to - 1] ?? 0) - end < 0.4) to = segment.to;
  else {
    const held = heldOnLimiter(engineSpeed, time, rise);
    const lift = held === null ? liftTime(engineSpeed, time, segment, end) : held;
    to = Math.max(from + 1, indexAt(time, lift + 1e-9, segment.from, segment.to));
  }
  return { from, to };
}

/** Last moment before the foot lifts near `end`. */
function liftTime(engineSpeed: Float64Array, time: Float64Array, segment: Span, end: number): number {
  const knee = kneeTime(engineSpeed, time, segment, {
    from_s: end - 0.4,
    to_s: end + 0.5,
    before_s: 0.4,
    after_s: 0.3,
    turn: -1,
  });
  return knee - halfLift_s;
}

/** Mean slope of the rise's first second. */
function usualSlope(engineSpeed: Float64Array, time: Float64Array, rise: Rise): number {
  const to = indexAt(time, (time[rise.from] ?? 0) + 1, rise.from, rise.to);
  return lineThrough(engineSpeed, time, rise.from, to, 0).slope;
}

/** A car that rolls out of a pull slows by more than this share of its engine speed per second (common practice). */
const rollOutSlope = 0.012;
/** Held engine speed loses less than this share of itself per second, and less altogether; noise is no slope. */
const levelSlope = 0.003;
const levelLoss = 0.002;

/**
 * Last moment at which engine speed stands level at the top, held by the limiter; null where it turns down at once.
 */
function heldOnLimiter(engineSpeed: Float64Array, time: Float64Array, rise: Rise): number | null {
  const { segment } = rise;
  const start = time[rise.to - 1] ?? 0;
  const soon = indexAt(time, start + 0.3, rise.to, segment.to);
  const top = medianOf(engineSpeed, Math.min(rise.to, soon - 3), soon);
  let i = rise.to;
  while (i < segment.to && !(Math.abs((engineSpeed[i] ?? top) - top) > 0.02 * top)) i++;
  const out = time[Math.max(rise.to, i - 1)] ?? 0;
  if (out - start <= 0.3) return null;
  const knee = kneeTime(engineSpeed, time, segment, {
    from_s: start + 0.1,
    to_s: out,
    before_s: 0,
    after_s: 0.3,
    turn: -1,
  });
  if (knee - start <= 0.28) return null;
  const turn = indexAt(time, knee, rise.to, segment.to);
  const level = lineThrough(engineSpeed, time, rise.to, turn, start).slope;
  const after = indexAt(time, knee + 0.5, turn, segment.to);
  const rollOut = lineThrough(engineSpeed, time, turn, after, knee).slope;
  const isLevel = level > -levelSlope * top && level * (knee - start) > -levelLoss * top;
  const isHeld = isLevel && rollOut < -rollOutSlope * top && rollOut < 2 * level;
  return isHeld ? knee : null;
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
