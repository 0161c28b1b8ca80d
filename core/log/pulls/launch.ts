import { medianOf } from '../median.ts';
import type { Span } from '../span.ts';
import { medianOfThree } from '../speeds/speed-ratio.ts';

/** No gear is driven with a closed clutch this slowly: walking pace [m/s] (common practice). */
const walking = 2;
/** As the clutch bites engine speed falls by this share and more (common practice). */
const bites = 0.15;

/**
 * Whether a span is a car that moves off: over its first fifth it hardly rolls, and engine speed falls as the clutch
 * bites. There a plate opened by a quarter lets nearly as much air in as one wide open, so that pressure or acceleration
 * take it for full throttle.
 *
 * @param engineSpeed  [rad/s]
 * @param roadSpeed    [m/s]
 */
export function isLaunch(engineSpeed: Float64Array, roadSpeed: Float64Array, { from, to }: Span): boolean {
  const fifth = Math.max(1, Math.round((to - from) / 5));
  if (!(medianOf(roadSpeed, from, from + fifth) < walking)) return false;
  let high = 0;
  for (let i = from + 1; i < to - fifth; i++) {
    const speed = medianOfThree(engineSpeed, i);
    if (speed > high) high = speed;
    if (speed < (1 - bites) * high) return true;
  }
  return false;
}
