import { indexAt } from '../speeds/speed-ratio.ts';
import type { Rise } from './rise.ts';
import { lineThrough } from './steady-rise.ts';

/** A hand needs longer from the highest engine speed to the lowest, a box is quicker [s] (common practice). */
const shortestByHand_s = 0.35;
/** What a foot takes from the closed clutch to its stop, at the quick end of its kind [s] (common practice). */
const quickFoot_s = 0.18;
/** A quick foot's acceleration seems to begin so late behind the lowest engine speed [s]. */
const quickDelay_s = 0.07;
/** Each second by which it seems to begin later is so many of the foot's: plates let most air through at once. */
const perDelay = 1.6;
/** Nineteen of twenty lie within (generated drives) [s]. */
const footWithin_s = 0.22;

/**
 * When full throttle begins after a gear change: at once where the box changed, since its pedal stays down; where a
 * hand did, the foot has to come down again, and how long that took is told by how far behind the lowest engine speed
 * the line of the acceleration after it begins.
 *
 * @param lowest  sample of the lowest engine speed
 */
export function startAfterShift(
  engineSpeed: Float64Array,
  time: Float64Array,
  rise: Rise,
  lowest: number,
): { readonly at_s: number; readonly within_s: number } {
  const t = time[lowest] ?? 0;
  const earliest = indexAt(time, t - 1, rise.segment.from, lowest);
  let top = lowest;
  for (let i = lowest; i >= earliest; i--) if ((engineSpeed[i] ?? 0) > (engineSpeed[top] ?? 0)) top = i;
  if (t - (time[top] ?? 0) < shortestByHand_s) return { at_s: t, within_s: 0 };
  const from = indexAt(time, t + 0.45, lowest, rise.to);
  const after = lineThrough(engineSpeed, time, from, indexAt(time, t + 1, from, rise.to), t);
  const delay = after.slope > 0 ? ((engineSpeed[lowest] ?? 0) - after.level) / after.slope : quickDelay_s;
  const more = Math.min(0.25, Math.max(0, delay - quickDelay_s));
  return { at_s: t + quickFoot_s + perDelay * more, within_s: footWithin_s };
}

/**
 * Sample of the highest engine speed where a gear change follows the rise at once: engine speed then falls by 8 %
 * within half a second, faster than any car slows in gear. Null where none follows.
 */
export function shiftAfter(engineSpeed: Float64Array, time: Float64Array, rise: Rise): number | null {
  const a = indexAt(time, (time[rise.to - 1] ?? 0) - 0.3, rise.from, rise.segment.to);
  const b = indexAt(time, (time[rise.to - 1] ?? 0) + 0.4, a, rise.segment.to);
  let top = a;
  for (let i = a; i < b; i++) if ((engineSpeed[i] ?? 0) > (engineSpeed[top] ?? 0)) top = i;
  const c = indexAt(time, (time[top] ?? 0) + 0.5, top, rise.segment.to);
  for (let i = top; i < c; i++) if ((engineSpeed[i] ?? 0) < 0.92 * (engineSpeed[top] ?? 0)) return top;
  return null;
}

/** Sample of the lowest engine speed where a gear change leads into the rise; null where none does. */
export function shiftBefore(engineSpeed: Float64Array, time: Float64Array, rise: Rise): number | null {
  const a = indexAt(time, (time[rise.from] ?? 0) - 0.6, rise.segment.from, rise.segment.to);
  const b = indexAt(time, (time[rise.from] ?? 0) + 0.2, a, rise.segment.to);
  let low = b;
  for (let i = b; i >= a; i--) if ((engineSpeed[i] ?? 0) < (engineSpeed[low] ?? 0)) low = i;
  const c = indexAt(time, (time[low] ?? 0) - 0.5, rise.segment.from, low);
  for (let i = c; i < low; i++) if ((engineSpeed[i] ?? 0) > 1.08 * (engineSpeed[low] ?? 0)) return low;
  return null;
}
