import { indexAt } from '../log/index.ts';
import { solveNormal } from './smoothing/normal-equations.ts';

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
 * @param speed  one reading per sample
 * @returns      one past the last sample of the climb; all samples where it goes on to the end
 *
 * Check: 500 rpm/s up to 6,400 rpm, level for the last 0.3 s: the sample before the level.
 */
export function climbEnd(time: Float64Array, speed: Float64Array): number {
  const to = speed.length;
  let high = 0;
  let top = speed[0] as number;
  for (let i = 1; i < to; i++)
    if ((speed[i] as number) > top) {
      high = i;
      top = speed[i] as number;
    }
  while (high > 0 && (speed[high - 1] as number) >= heldWithin * top) high--;
  const at = (i: number) => time[i] as number;
  const first = indexAt(time, at(high) - climb_s, 0, high);
  if (to - first < fewest) return to;
  const t = time.subarray(first, to);
  const gained = speed.slice(first);
  for (let i = 0; i < gained.length; i++) gained[i] = (gained[i] as number) - (speed[first] as number);
  const bent = errorOfParabola(t, gained);
  const stride = Math.max(1, Math.ceil((to - high) / mostKnees));
  let best = { error: Number.POSITIVE_INFINITY, slope: 0 };
  let end = to;
  const errorOfStand = stands(t, gained);
  // At least two samples stand: one may be noise.
  for (let knee = Math.max(first + 4, high); knee < to - 1; knee += stride) {
    const course = errorOfStand(knee - first);
    if (course.error < best.error) {
      best = course;
      end = knee;
    }
  }
  const scatter = Math.sqrt(best.error / (to - first));
  const missing = best.slope * (at(to - 1) - at(end));
  return bent > better * best.error && missing > short * scatter ? end : to;
}

/** Squared error and slope of the best straight rise up to a sample and stand from it; each from sums taken once. */
function stands(
  t: Float64Array,
  y: Float64Array,
): (knee: number) => { readonly error: number; readonly slope: number } {
  const n = t.length;
  const upTo = {
    t: new Float64Array(n + 1),
    tt: new Float64Array(n + 1),
    y: new Float64Array(n + 1),
    ty: new Float64Array(n + 1),
  };
  const zero = t[0] as number;
  let squares = 0;
  for (let i = 0; i < n; i++) {
    const x = (t[i] as number) - zero;
    const value = y[i] as number;
    upTo.t[i + 1] = (upTo.t[i] as number) + x;
    upTo.tt[i + 1] = (upTo.tt[i] as number) + x * x;
    upTo.y[i + 1] = (upTo.y[i] as number) + value;
    upTo.ty[i + 1] = (upTo.ty[i] as number) + x * value;
    squares += value * value;
  }
  const mean = (upTo.y[n] as number) / n;
  return (knee) => {
    // Time to the knee, nought from there on.
    const x = (t[knee] as number) - zero;
    const sum = (upTo.t[knee] as number) - knee * x;
    const sumSquares = (upTo.tt[knee] as number) - 2 * x * (upTo.t[knee] as number) + knee * x * x;
    const along = (upTo.ty[knee] as number) - x * (upTo.y[knee] as number) - sum * mean;
    const slope = along / (sumSquares - (sum * sum) / n);
    return { error: Math.max(0, squares - n * mean * mean - slope * along), slope };
  };
}

function errorOfParabola(t: Float64Array, y: Float64Array): number {
  const n = t.length;
  const middle = ((t[0] as number) + (t[n - 1] as number)) / 2;
  let [x1, x2, x3, x4, y0, y1, y2, squares] = [0, 0, 0, 0, 0, 0, 0, 0];
  for (let i = 0; i < n; i++) {
    const x = (t[i] as number) - middle;
    const value = y[i] as number;
    x1 += x;
    x2 += x * x;
    x3 += x * x * x;
    x4 += x * x * x * x;
    y0 += value;
    y1 += x * value;
    y2 += x * x * value;
    squares += value * value;
  }
  const solved = solveNormal(
    Float64Array.of(n, x1, x2, x1, x2, x3, x2, x3, x4),
    Float64Array.of(y0, y1, y2),
    3,
  );
  if (!solved) return 0;
  const [a = 0, b = 0, c = 0] = solved;
  return squares - a * y0 - b * y1 - c * y2;
}
