import { indexAt } from '../speeds/speed-ratio.ts';

/** A cut of torque for a gear change lasts no longer than this beyond the fall of engine speed [s] (common practice). */
const longestCut_s = 0.6;
/** So much of the climb after it shows its slope [s], and so many samples at least. */
const climb_s = 0.45;
const fewest = 6;
const step_s = 0.02;

/**
 * When the climb in the new gear begins [s]. Where the gear is changed with the pedal down, torque is cut or clutches
 * slip for a while after engine speed has met the new gear: it stands there, and the car pulls only once it climbs.
 *
 * The course that fits best, level up to a moment and straight up from it, tells the moment.
 *
 * @param engineSpeed  [rad/s], in the new gear from `bottom` on
 * @param bottom       sample at which it has met the new gear
 * @param to           end of the span
 *
 * Check: level for 0.2 s, then 80 rad/s2, 0.2 s after `bottom`.
 */
export function torqueBack(
  engineSpeed: Float64Array,
  time: Float64Array,
  bottom: number,
  to: number,
): number {
  const start = time[bottom] ?? 0;
  const end = Math.min(
    to,
    Math.max(bottom + fewest, indexAt(time, start + longestCut_s + climb_s, bottom, to)),
  );
  if (end - bottom < fewest) return start;
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let cut = 0; cut <= longestCut_s; cut += step_s) {
    const error = climbError(engineSpeed, time, bottom, end, start + cut);
    if (error < least) {
      least = error;
      best = cut;
    }
  }
  return start + best;
}

/** Squared error of the best level up to `knee` and climb from it; infinite where engine speed would fall. */
function climbError(
  values: Float64Array,
  time: Float64Array,
  from: number,
  to: number,
  knee: number,
): number {
  let [n, sx, sxx, sy, sxy, syy] = [0, 0, 0, 0, 0, 0];
  const base = values[from] ?? 0;
  for (let i = from; i < to; i++) {
    const y = (values[i] ?? Number.NaN) - base;
    if (Number.isNaN(y)) continue;
    const x = Math.max(0, (time[i] ?? 0) - knee);
    n++;
    sx += x;
    sxx += x * x;
    sy += y;
    sxy += x * y;
    syy += y * y;
  }
  const spread = sxx - (sx * sx) / n;
  const rise = sxy - (sx * sy) / n;
  if (!(spread > 0) || rise <= 0) return Number.POSITIVE_INFINITY;
  return syy - (sy * sy) / n - (rise * rise) / spread;
}
