import { rangeWithin } from '../range-within.ts';
import type { Span } from '../span.ts';
import { withoutSpikes } from '../speeds/speed-ratio.ts';

/** A limiter lets engine speed fall by this share at least before it gives torque again, and no further than that. */
const fall = { least: 0.01, most: 0.12 };
/** Back within this share of the highest. */
const back = 0.005;
const leastBounces = 2;
const leastHeld_s = 0.4;
/** Engine speed stands at the top for so much longer than it takes the pull to climb that far (common practice). */
const longer = 2.5;

/**
 * Sample at which engine speed first comes to the limiter, where it ends a pull by falling and coming back at one level;
 * null where it climbs to the end. All shares are common practice.
 *
 * @param engineSpeed  [rad/s]
 */
export function bouncesAtTop(engineSpeed: Float64Array, time: Float64Array, pull: Span): number | null {
  const speed = withoutSpikes(engineSpeed.subarray(pull.from, pull.to));
  const high = Math.max(0, rangeWithin(speed, 0, speed.length).high);
  let first = 0;
  while (first < speed.length && !((speed[first] as number) >= (1 - fall.least) * high)) first++;
  if (first === speed.length) return null;
  let bounces = 0;
  let isDown = false;
  for (let i = first; i < speed.length; i++) {
    const v = speed[i] as number;
    if (v < (1 - fall.most) * high) return null;
    if (v < (1 - fall.least) * high) isDown = true;
    else if (isDown && v > (1 - back) * high) {
      isDown = false;
      bounces++;
    }
  }
  const at = (i: number) => time[pull.from + i] ?? 0;
  const held_s = at(speed.length - 1) - at(first);
  const climb = (high - (speed[0] as number)) / Math.max(1e-9, at(first) - at(0));
  const usual_s = (fall.least * high) / Math.max(1e-9, climb);
  return bounces >= leastBounces && held_s > Math.max(leastHeld_s, longer * usual_s)
    ? pull.from + first
    : null;
}
