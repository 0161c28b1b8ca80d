import { indexAt } from '../log/index.ts';
import { solveNormal } from './normal-equations.ts';

/** So much of the climb before the highest hundredths shows its slope [s]; it hardly bends in that time. */
const climb_s = 1.2;
/** A limiter holds engine speed within this share of its highest (common practice: cuts come back within 2 %). */
const heldWithin = 0.985;
const fewest = 8;
/** Courses that are tried. */
const mostKnees = 40;
/** Squared errors of a bent climb over those of one that ends: below this on 98 of 100 climbs that go on (generated). */
const better = 1.1;
/** What the climb would have gained, in scatters of one sample: below this on 99 of 100 climbs that go on (generated). */
const short = 7;

/**
 * Where a climb ends that does not go on to the last sample: on the limiter, or as the foot came off, the last
 * readings stand or go up and down. They are no power of the engine, and a smooth curve through them is off for half a
 * second before.
 *
 * The best course that rises straight and then stands is taken where it fits clearly better than a bent one and the
 * climb would have gained clearly more than the readings scatter.
 *
 * @param speed  one reading per sample, of [from, to)
 * @returns      one past the last sample of the climb; `to` where it goes on to the end
 *
 * Check: 500 rpm/s up to 6,400 rpm, level for the last 0.3 s: the sample before the level.
 */
export function climbEnd(time: Float64Array, speed: (i: number) => number, from: number, to: number): number {
  let top = from;
  for (let i = from; i < to; i++) if (speed(i) > speed(top)) top = i;
  let high = top;
  while (high > from && speed(high - 1) >= heldWithin * speed(top)) high--;
  const at = (i: number) => time[i] as number;
  const first = indexAt(time, at(high) - climb_s, from, high);
  if (to - first < fewest) return to;
  const bent = errorOfParabola(time, speed, first, to);
  const stride = Math.max(1, Math.ceil((to - high) / mostKnees));
  let best = { error: Number.POSITIVE_INFINITY, slope: 0 };
  let end = to;
  // At least two samples stand: one may be noise.
  for (let knee = Math.max(first + 4, high); knee < to - 1; knee += stride) {
    const course = errorOfStand(time, speed, first, to, at(knee));
    if (course.error < best.error) {
      best = course;
      end = knee;
    }
  }
  const scatter = Math.sqrt(best.error / (to - first));
  const missing = best.slope * (at(to - 1) - at(end));
  return bent > better * best.error && missing > short * scatter ? end : to;
}

/** Squared error and slope of the best straight rise up to a moment and stand from it. */
function errorOfStand(
  time: Float64Array,
  speed: (i: number) => number,
  from: number,
  to: number,
  knee: number,
): { readonly error: number; readonly slope: number } {
  let [sx, sxx, sy, sxy, syy] = [0, 0, 0, 0, 0];
  const base = speed(from);
  const n = to - from;
  for (let i = from; i < to; i++) {
    const x = Math.min(0, (time[i] as number) - knee);
    const y = speed(i) - base;
    sx += x;
    sxx += x * x;
    sy += y;
    sxy += x * y;
    syy += y * y;
  }
  const slope = (sxy - (sx * sy) / n) / (sxx - (sx * sx) / n);
  return { error: syy - (sy * sy) / n - slope * (sxy - (sx * sy) / n), slope };
}

function errorOfParabola(time: Float64Array, speed: (i: number) => number, from: number, to: number): number {
  const middle = ((time[from] as number) + (time[to - 1] as number)) / 2;
  const base = speed(from);
  const normal = new Float64Array(9);
  const right = new Float64Array(3);
  const of = new Float64Array(3);
  let squares = 0;
  for (let i = from; i < to; i++) {
    const t = (time[i] as number) - middle;
    const y = speed(i) - base;
    of.set([1, t, t * t]);
    for (let a = 0; a < 3; a++) {
      for (let b = 0; b < 3; b++)
        normal[3 * a + b] = (normal[3 * a + b] as number) + (of[a] as number) * (of[b] as number);
      right[a] = (right[a] as number) + (of[a] as number) * y;
    }
    squares += y * y;
  }
  const solved = solveNormal(normal, right, 3);
  if (!solved) return 0;
  for (let a = 0; a < 3; a++) squares -= (solved[a] as number) * (right[a] as number);
  return squares;
}
