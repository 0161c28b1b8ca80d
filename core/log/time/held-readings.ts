import type { Span } from '../span.ts';

/** Rows on which a sensor that is slower than the file was read anew, and its own interval [s]. */
export type HeldReadings = { readonly interval: number; readonly rows: Int32Array };

/** Changes by which a beat is known where it is short; */
const leastChanges = 5;
/** where more rows than this stand between them, a short log needs no more than three. */
const longBeat = { rows: 5, least: 3 };
/** No sensor that is read on every row pauses for so many of them while its numbers leap. */
const leastRows = 1.8;
/** A number that is written in steps climbs by one of them; more at once is a leap over what was not read. */
const leap = 1.6;
/** After a long beat it is enough that two changes are unlike: steps are all one size. */
const unlike = 1.03;
/** Of the changes while the car gathers speed so many leap at least. */
const leastLeaps = 0.15;
/** Two changes closer than the rest are a spike or a missed row, and no more than this share of them. */
const oddShare = 0.08;

/**
 * The true readings of a channel that the file repeats in between; null where it is read on every row, or where that
 * can't be told from a number written in coarse steps.
 *
 * A held number changes on some rows only, and then by more than the step that it is written in. One that is read on
 * every row changes on rows next to each other wherever it moves by more than a step.
 * A reading that came out as the one before it is told by the beat: one interval before the next change.
 *
 * @param from, to  rows [from, to) with the car both faster and slower, some 20 s at best
 */
export function heldReadings(
  time: Float64Array,
  values: Float64Array,
  from: number,
  to: number,
): HeldReadings | null {
  const row = ((time[to - 1] as number) - (time[from] as number)) / Math.max(1, to - 1 - from);
  const most = (to - from) / leastRows;
  const changes: number[] = [];
  let step = Number.POSITIVE_INFINITY;
  // Most channels are read on every row: so many changes on rows next to each other settle it, whatever follows.
  let close = 0;
  let before = Number.NEGATIVE_INFINITY;
  for (let i = from + 1; i < to; i++) {
    const jump = Math.abs((values[i] as number) - (values[i - 1] as number));
    if (!(jump > 0)) continue;
    const now = time[i] as number;
    if (now - before <= leastRows * row) close++;
    before = now;
    changes.push(i);
    if (jump < step) step = jump;
    if (changes.length > most || close > oddShare * most) return null;
  }
  if (changes.length < longBeat.least) return null;
  const gaps = new Float64Array(changes.length - 1);
  for (let k = 1; k < changes.length; k++)
    gaps[k - 1] = (time[changes[k] as number] as number) - (time[changes[k - 1] as number] as number);
  gaps.sort();
  const shortest = gaps[Math.floor(oddShare * gaps.length)] as number;
  const isLong = shortest > longBeat.rows * row;
  if (!(isLong || (changes.length >= leastChanges && shortest > leastRows * row))) return null;
  let leaps = 0;
  for (const i of changes) {
    const jump = Math.abs((values[i] as number) - (values[i - 1] as number));
    if (jump > (isLong ? unlike : leap) * step) leaps++;
  }
  if (leaps < leastLeaps * changes.length) return null;
  const interval = usualGap(gaps);
  return { interval, rows: withRepeats(time, from, changes, interval) };
}

/** Shorter gaps are single beats; where a number stood still they are several. */
function usualGap(gaps: Float64Array): number {
  const single = gaps[Math.floor(0.25 * gaps.length)] as number;
  let sum = 0;
  let count = 0;
  for (const gap of gaps) {
    if (gap < 0.6 * single || gap > 1.4 * single) continue;
    sum += gap;
    count++;
  }
  return sum / count;
}

/** Adds the reading one interval before a change that took longer, and before the first of all. */
function withRepeats(
  time: Float64Array,
  from: number,
  changes: readonly number[],
  interval: number,
): Int32Array {
  const rows: number[] = [];
  let before = from;
  for (const i of changes) {
    const since = (time[i] as number) - (time[before] as number);
    // Behind the first row there is no telling when its number was read.
    if (since > 1.5 * interval || (rows.length === 0 && since > interval)) {
      let k = i - 1;
      while (k > before + 1 && (time[i] as number) - (time[k] as number) < interval * 0.999) k--;
      if (k > before) rows.push(k);
    }
    rows.push(i);
    before = i;
  }
  return Int32Array.from(rows);
}

/** Below this a held number is as good as a line for the gear [s]. */
const slow_s = 0.28;

/**
 * A channel that is read seldom, as a straight line from one reading to the next; the array itself where it is read
 * often enough. For telling gears: power takes the readings alone.
 */
export function lineBetweenReadings(
  time: Float64Array,
  values: Float64Array,
  segments: readonly Span[],
): Float64Array {
  let out: Float64Array | null = null;
  for (const { from, to } of segments) {
    const held = heldReadings(time, values, from, to);
    if (!held || held.interval < slow_s) continue;
    out ??= values.slice();
    for (let k = 1; k < held.rows.length; k++) {
      const a = held.rows[k - 1] as number;
      const b = held.rows[k] as number;
      const low = values[a] as number;
      const rise = ((values[b] as number) - low) / ((time[b] as number) - (time[a] as number));
      for (let i = a + 1; i < b; i++) out[i] = low + rise * ((time[i] as number) - (time[a] as number));
    }
  }
  return out ?? values;
}
