import type { Span } from '../span.ts';
import { indexAt } from '../speeds/speed-ratio.ts';
import { usualStep } from '../time/time-axis.ts';

/** Half of the window a slope is taken over [s]; at 10 Hz that is five samples. */
const halfWindow_s = 0.25;

/**
 * Slope of a channel at each sample [unit per second]: least squares over half a second around it, over two
 * samples either side at least; NaN where fewer than three numbers stand.
 */
export function slopeOf(values: Float64Array, time: Float64Array, segments: readonly Span[]): Float64Array {
  const slope = new Float64Array(values.length).fill(Number.NaN);
  for (const { from, to } of segments) {
    let a = from;
    let b = from;
    for (let i = from; i < to; i++) {
      const t = time[i] ?? 0;
      while (a < i - 2 && (time[a] ?? 0) < t - halfWindow_s) a++;
      while (b < to && ((time[b] ?? 0) <= t + halfWindow_s || b <= i + 2)) b++;
      slope[i] = lineThrough(values, time, a, b, t).slope;
    }
  }
  return slope;
}

/**
 * Standard deviation of one such slope, from the noise of single samples: the middle second difference, so that the
 * channel's own bends do not count.
 */
export function slopeNoise(values: Float64Array, time: Float64Array): number {
  const bends: number[] = [];
  const stride = Math.max(1, Math.floor(values.length / 20_000));
  for (let i = 2; i < values.length; i += stride) {
    const bend = Math.abs((values[i] ?? 0) - 2 * (values[i - 1] ?? 0) + (values[i - 2] ?? 0));
    if (!Number.isNaN(bend)) bends.push(bend);
  }
  bends.sort((a, b) => a - b);
  // Second differences have sqrt(6) times the noise; median to standard deviation is 1.4826 (normal spread).
  const sample = (1.4826 * (bends[bends.length >> 1] ?? 0)) / Math.sqrt(6);
  const step = usualStep(time) || 0.05;
  const n = 2 * Math.max(2, Math.floor(halfWindow_s / step)) + 1;
  return sample / (step * Math.sqrt((n * (n * n - 1)) / 12));
}

/** Least-squares line through a window: level at `at` and slope. */
export function lineThrough(
  values: Float64Array,
  time: Float64Array,
  from: number,
  to: number,
  at: number,
): { level: number; slope: number } {
  let n = 0;
  let st = 0;
  let sv = 0;
  let stt = 0;
  let stv = 0;
  for (let i = from; i < to; i++) {
    const v = values[i] ?? Number.NaN;
    if (Number.isNaN(v)) continue;
    const t = (time[i] ?? 0) - at;
    n++;
    st += t;
    sv += v;
    stt += t * t;
    stv += t * v;
  }
  const spread = n * stt - st * st;
  if (n < 3 || spread <= 0) return { level: n > 0 ? sv / n : Number.NaN, slope: Number.NaN };
  const slope = (n * stv - st * sv) / spread;
  return { level: (sv - slope * st) / n, slope };
}

/**
 * Time at which a channel's slope changes, within [from_s, to_s]: the knee of the two joined lines that fit best
 * over the window.
 */
export function kneeTime(
  values: Float64Array,
  time: Float64Array,
  segment: Span,
  window: {
    readonly from_s: number;
    readonly to_s: number;
    readonly before_s: number;
    readonly after_s: number;
    /** 1 where the slope rises at the knee, -1 where it falls. */
    readonly turn: 1 | -1;
  },
): number {
  const a = indexAt(time, window.from_s - window.before_s, segment.from, segment.to);
  const b = indexAt(time, window.to_s + window.after_s, segment.from, segment.to);
  const step = Math.max(0.01, (window.to_s - window.from_s) / 60);
  let best = (window.from_s + window.to_s) / 2;
  let least = Number.POSITIVE_INFINITY;
  for (let knee = window.from_s; knee <= window.to_s; knee += step) {
    const error = hingeError(values, time, a, b, knee, window.turn);
    if (error < least) {
      least = error;
      best = knee;
    }
  }
  return best;
}

/** Squared error of the best level + slope + change of slope at `knee`, by normal equations. */
function hingeError(
  values: Float64Array,
  time: Float64Array,
  from: number,
  to: number,
  knee: number,
  turn: 1 | -1,
): number {
  let n = 0;
  let s1 = 0;
  let s2 = 0;
  let s11 = 0;
  let s12 = 0;
  let s22 = 0;
  let y0 = 0;
  let y1 = 0;
  let y2 = 0;
  let yy = 0;
  const base = values[from] ?? 0;
  for (let i = from; i < to; i++) {
    const v = (values[i] ?? Number.NaN) - base;
    if (Number.isNaN(v)) continue;
    const x1 = (time[i] ?? 0) - knee;
    const x2 = Math.max(x1, 0);
    n++;
    s1 += x1;
    s2 += x2;
    s11 += x1 * x1;
    s12 += x1 * x2;
    s22 += x2 * x2;
    y0 += v;
    y1 += v * x1;
    y2 += v * x2;
    yy += v * v;
  }
  // Gauss elimination of the symmetric 3 x 3 system.
  const a11 = s11 - (s1 * s1) / n;
  const a12 = s12 - (s1 * s2) / n;
  const a22 = s22 - (s2 * s2) / n;
  const b1 = y1 - (y0 * s1) / n;
  const b2 = y2 - (y0 * s2) / n;
  if (!(n >= 4) || !(a11 > 0)) return Number.POSITIVE_INFINITY;
  const d22 = a22 - (a12 * a12) / a11;
  const d2 = b2 - (a12 * b1) / a11;
  if (d2 * turn < 0) return Number.POSITIVE_INFINITY;
  const explained = (b1 * b1) / a11 + (d22 > 1e-12 ? (d2 * d2) / d22 : 0);
  return yy - (y0 * y0) / n - explained;
}
