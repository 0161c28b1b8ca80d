import { sampleFlag } from '../channel.ts';
import type { Span } from '../span.ts';

/** A value is held no longer than this many of the column's own usual intervals. */
const longestHold = 3;

/**
 * Fills the empty cells of a sensor that is slower than the file with its last value, flagged as held. A cell
 * that is empty for much longer than the sensor's own interval stays NaN, as does text, and nothing is held
 * across segments.
 *
 * @param values    changed in place
 * @param flags     changed in place
 * @returns         whether any cell is empty
 */
export function fillHeld(values: Float64Array, flags: Uint8Array, segments: readonly Span[]): boolean {
  if (flags.indexOf(sampleFlag.missing) < 0) return false;
  const limit = longestHold * usualInterval(flags);
  for (const { from, to } of segments) {
    let last = Number.NaN;
    let age = 0;
    for (let i = from; i < to; i++) {
      if (flags[i] === 0) {
        last = values[i] ?? Number.NaN;
        age = 0;
      } else if (flags[i] === sampleFlag.missing && ++age < limit && !Number.isNaN(last)) {
        values[i] = last;
        flags[i] = sampleFlag.held;
      }
    }
  }
  return true;
}

/** Median count of rows from one filled cell to the next. */
function usualInterval(flags: Uint8Array): number {
  const counts: number[] = [];
  let last = -1;
  for (let i = 0; i < flags.length && counts.length < 4000; i++) {
    if (flags[i] !== 0) continue;
    if (last >= 0) counts.push(i - last);
    last = i;
  }
  counts.sort((a, b) => a - b);
  return counts[counts.length >> 1] ?? 1;
}
