import { medianOf } from '../median.ts';
import { indexAt } from '../speeds/speed-ratio.ts';
import type { Rise } from './rise.ts';
import { lineThrough } from './steady-rise.ts';

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
/** The whole travel of a slow foot that lifts [s] (common practice). */
const slowLift_s = 0.35;
/** Under this fall, as a share of engine speed per second, nothing shows whether a limiter or a lift turned it. */
const unclearFall = 0.02;
/** The limiter stands where the highest rise of the log ends, but for noise. */
const nearHighest = 0.98;

/**
 * Last moment before the foot lifts where engine speed stands level at the top, held by the limiter; null where it
 * turns down at once. The best of all courses of three lines, up, level and down, tells for how long it stood.
 */
export function heldOnLimiter(
  engineSpeed: Float64Array,
  time: Float64Array,
  rise: Rise,
  highest: number,
): { readonly at_s: number; readonly within_s: number } | null {
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
  if (!(Math.abs(level.slope) < levelSlope * top)) return null;
  const at_s = held.to - unseenLift_s;
  // A car that rolls on at the limiter's speed stands just as level: the foot may have left at once.
  return { at_s, within_s: Math.max(slowLift_s, at_s - held.from) };
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
 * For how long after a lift at the top of the log engine speed stands as a limiter might hold it, falling too slowly
 * to tell: the lift may have come so much later [s]. Nothing where it falls at once.
 */
export function standsAfter(
  engineSpeed: Float64Array,
  time: Float64Array,
  rise: Rise,
  highest: number,
  lift_s: number,
): number {
  const { to } = rise.segment;
  const from = indexAt(time, lift_s + 0.15, rise.from, to);
  const until = indexAt(time, lift_s + 0.65, from, to);
  const top = medianOf(engineSpeed, Math.max(rise.from, from - 3), from);
  if (top < nearHighest * highest) return 0;
  const { slope } = lineThrough(engineSpeed, time, from, until, lift_s);
  if (!(slope > -unclearFall * top)) return 0;
  let i = from;
  while (i < to - 1 && (engineSpeed[i] ?? 0) > 0.98 * top && (time[i] ?? 0) < lift_s + 1) i++;
  return (time[i] ?? lift_s) - lift_s;
}
