import { indexAt, lineThrough } from '../log/index.ts';

/** A clutch opens, or the row tells of the lift already, within the last of a pull [s] (common practice). */
const end_s = 0.2;
/** The climb before it shows where the readings should stand [s]. */
const climb_s = 0.6;
const fewest = 5;
/** Above its own climb by this share, one row after it, an engine in gear can't be (common practice). */
const leap = 0.01;
/** ... and by this many scatters of one reading, so that no noise passes for it. */
const scatters = 6;

/**
 * Where engine speed leaps above its climb at the end of a pull: the pedal is still down as the clutch opens, or the
 * wheels come loose, and what is read there is no power that reaches the road.
 *
 * @param speed  engine speed, one per sample
 * @returns      first sample of the leap; `to` where there is none
 */
export function leapAtEnd(time: Float64Array, speed: Float64Array, from: number, to: number): number {
  const at = (i: number) => time[i] as number;
  const earliest = indexAt(time, at(to - 1) - end_s, from, to);
  for (let i = earliest; i < to; i++) {
    const first = Math.min(indexAt(time, at(i) - climb_s, from, i), i - fewest);
    if (first < from) continue;
    const { level, slope } = lineThrough(speed, time, first, i, at(i));
    let squares = 0;
    for (let k = first; k < i; k++) {
      const off = (speed[k] as number) - level - slope * (at(k) - at(i));
      if (!Number.isNaN(off)) squares += off * off;
    }
    const least = Math.max(leap * level, scatters * Math.sqrt(squares / (i - first - 2)));
    if ((speed[i] as number) - level > least) return i;
  }
  return to;
}
