import type { Note } from '../../result/index.ts';
import type { LogStyle } from '../channel.ts';
import type { Segment } from '../span.ts';
import { burstAt } from './clock-bursts.ts';

export type TimeAxis = {
  /** [s], one per sample; never goes backwards. */
  readonly time: Float64Array;
  readonly segments: readonly Segment[];
  readonly warnings: readonly Note[];
};

export type TimeFormat = LogStyle['timeFormat'];

/** A row more than this many usual steps after the last, and half a second, begins a new segment. */
const gapSteps = 6;
const gapSeconds = 0.5;
const day = 86_400;
/** A clock of twelve hours that does not say which half of the day it is falls so far at one o'clock [s]. */
const halfDay = day / 2;
/** Rows further apart than this at one o'clock are a clock that starts anew [s] (common practice). */
const longestTurn_s = 60;
/** Rows further apart show neither the ends of a pull nor its power, if it is seconds that the column counts. */
const slowestRows_s = 0.45;
const enoughRows = 50;

/**
 * The unit of a time column without one, from its usual step: an engine log has 2 to 1,000 rows a second
 * (common practice), so a step of 50 is ms, one of 20,000 is us, one of 50,000,000 is ns.
 */
export function timeFormatOf(step: number, rows: number): 's' | 'ms' | 'us' | 'ns' {
  if (step >= 4e6) return 'ns';
  if (step >= 4000) return 'us';
  if (step >= 4) return 'ms';
  // One to three: seconds, unless the run would then last most of a day.
  if (step >= 1 && step * rows > 20_000) return 'ms';
  return 's';
}

/** Usual step of a column that grows: the median of its positive steps; NaN where it never grows. */
export function usualStep(values: Float64Array): number {
  const stride = Math.max(1, Math.floor(values.length / 4000));
  const steps: number[] = [];
  for (let i = 1; i < values.length; i += stride) {
    const d = (values[i] ?? 0) - (values[i - 1] ?? 0);
    if (d > 0) steps.push(d);
  }
  steps.sort((a, b) => a - b);
  return steps[steps.length >> 1] ?? Number.NaN;
}

/**
 * A clean time axis from raw stamps [s]: stamps that are missing, repeated or out of order get times between
 * their neighbours (the file's order is trusted over the stamp), midnight and one o'clock are bridged, a clock that starts anew or
 * a gap begins a new segment. What stands behind a clock that starts anew is counted on by whole seconds: a moment of
 * the log is one sample, by which a pull can be named and a window found.
 *
 * @param stamps   seconds, one per row, NaN where none; the array is changed in place and handed out
 * @param isClock  true for a time of day, which falls by a day at midnight, or by half of one at one o'clock
 */
export function timeAxis(stamps: Float64Array, isClock: boolean): TimeAxis {
  const n = stamps.length;
  const warnings: Note[] = [];
  if (isClock) bridgeTurns(stamps);
  if (!risesThroughout(stamps)) warnings.push(...mended(stamps));
  const segments: Segment[] = [];
  const ended = (from: number, to: number, countedOn_s: number): Segment =>
    countedOn_s === 0 ? { from, to } : { from, to, countedOn_s };
  const usual = usualStep(stamps);
  if (usual > slowestRows_s && n >= enoughRows)
    warnings.push({ code: 'log/rows-far-apart', facts: { step_s: usual } });
  const gap = Math.max(gapSteps * usual, gapSeconds);
  let from = 0;
  let resets = 0;
  let resetAt = 0;
  let resetTo = 0;
  let gaps = 0;
  let gapAt = 0;
  let longest = 0;
  let shift = 0;
  for (let i = 1; i < n; i++) {
    const before = stamps[i - 1] ?? 0;
    const now = (stamps[i] ?? 0) + shift;
    stamps[i] = now;
    const d = now - before;
    if (d >= 0 && d <= gap) continue;
    segments.push(ended(from, i, shift));
    from = i;
    if (d < 0) {
      if (resets++ === 0) {
        resetAt = before;
        resetTo = now;
      }
      const on = Math.ceil(gap - d);
      shift += on;
      stamps[i] = now + on;
    } else {
      if (gaps++ === 0) gapAt = before;
      longest = Math.max(longest, d);
    }
  }
  segments.push(ended(from, n, shift));
  if (resets > 0)
    warnings.push({ code: 'log/clock-reset', facts: { count: resets, at_s: resetAt, to_s: resetTo } });
  if (gaps > 0) warnings.push({ code: 'log/gap', facts: { count: gaps, longest_s: longest, at_s: gapAt } });
  return { time: stamps, segments, warnings };
}

/** Whether each stamp is there and later than the one before: then there is nothing to mend. */
function risesThroughout(stamps: Float64Array): boolean {
  if (Number.isNaN(stamps[0])) return false;
  for (let i = 1; i < stamps.length; i++)
    if (!((stamps[i] as number) > (stamps[i - 1] as number))) return false;
  return true;
}

/** Mends missing, odd and repeated stamps in place, and says which. */
function mended(stamps: Float64Array): Note[] {
  const notes: Note[] = [];
  const step = usualStep(stamps);
  const repaired = repairGlitches(stamps, step);
  if (repaired.count > 0)
    notes.push({ code: 'log/time-repaired', facts: { count: repaired.count, first_s: repaired.first } });
  const spread = spreadRepeats(stamps, step);
  if (spread > 0) notes.push({ code: 'log/stamps-spread', facts: { count: spread } });
  return notes;
}

function bridgeTurns(stamps: Float64Array): void {
  let add = 0;
  let last = Number.NaN;
  for (let i = 0; i < stamps.length; i++) {
    const t = (stamps[i] ?? Number.NaN) + add;
    const fall = last - t;
    const turn = fall > halfDay ? day : fall > halfDay - longestTurn_s ? halfDay : 0;
    add += turn;
    stamps[i] = t + turn;
    if (!Number.isNaN(t)) last = stamps[i] ?? last;
  }
}

/** Stamps that are missing, or fall out of an otherwise steady order for some rows, become NaN, then filled. */
function repairGlitches(stamps: Float64Array, step: number): { count: number; first: number } {
  const n = stamps.length;
  let count = 0;
  let first = Number.NaN;
  let missing = -1;
  const drop = (i: number) => {
    if (Number.isNaN(first)) first = stamps[i] ?? Number.NaN;
    stamps[i] = Number.NaN;
    count++;
  };
  for (let i = 0; i < n; i++) {
    const now = stamps[i] ?? Number.NaN;
    const before = stamps[i - 1] ?? Number.NaN;
    if (Number.isNaN(now)) {
      count++;
      if (missing < 0) missing = i;
      continue;
    }
    if (!(now < before)) continue;
    // Which of the two is the odd one? The one that the rows around it do not need.
    const twoBefore = i >= 2 ? (stamps[i - 2] ?? Number.NEGATIVE_INFINITY) : Number.NEGATIVE_INFINITY;
    const next = stamps[i + 1] ?? Number.POSITIVE_INFINITY;
    if (now >= twoBefore && i >= 2 && next < before) drop(i - 1);
    else if (resumes(stamps, i, before)) {
      // Rows that a logger wrote twice fall back together.
      for (; i < n && (stamps[i] ?? Number.NaN) < before; i++) drop(i);
      i--;
    } else {
      const burst = burstAt(stamps, i, step);
      if (!burst) continue;
      for (let k = burst.from; k < burst.to; k++) if (!Number.isNaN(stamps[k] ?? 0)) drop(k);
      i = Math.max(i, burst.to - 1);
    }
  }
  if (count > 0) fillBetween(stamps);
  if (Number.isNaN(first) && missing >= 0) first = stamps[missing] ?? Number.NaN;
  return { count, first };
}

/** Whether within a few rows the stamps are past `level` again, so that the fall was a glitch and no reset. */
function resumes(stamps: Float64Array, from: number, level: number): boolean {
  for (let i = from + 1; i <= from + 3 && i < stamps.length; i++) if ((stamps[i] ?? 0) >= level) return true;
  return false;
}

/** NaN stamps get evenly spaced times between their neighbours, or the usual step at the ends. */
function fillBetween(stamps: Float64Array): void {
  const n = stamps.length;
  const step = usualStep(stamps) || 0;
  let i = 0;
  while (i < n) {
    if (!Number.isNaN(stamps[i] ?? 0)) {
      i++;
      continue;
    }
    let end = i;
    while (end < n && Number.isNaN(stamps[end] ?? 0)) end++;
    const left = stamps[i - 1];
    const right = stamps[end];
    for (let k = i; k < end; k++) {
      if (left !== undefined && right !== undefined && right >= left)
        stamps[k] = left + ((right - left) * (k - i + 1)) / (end - i + 1);
      else if (left !== undefined) stamps[k] = left + step * (k - i + 1);
      else if (right !== undefined) stamps[k] = right - step * (end - k);
    }
    i = end;
  }
}

/**
 * Rows that share a stamp are spread up to the next one: loggers with a coarse clock print several rows per
 * tick. Returns how many rows moved.
 */
function spreadRepeats(stamps: Float64Array, step: number): number {
  const n = stamps.length;
  let moved = 0;
  let i = 0;
  while (i < n) {
    let end = i + 1;
    while (end < n && stamps[end] === stamps[i]) end++;
    const run = end - i;
    if (run > 1) {
      const start = stamps[i] ?? 0;
      const next = stamps[end];
      // At the end of a file or before a gap the next stamp says nothing: the usual step is shared.
      const room =
        next !== undefined && next > start && next - start <= Math.max(2 * step, run * step)
          ? next - start
          : step;
      for (let k = i + 1; k < end; k++) stamps[k] = start + (room * (k - i)) / run;
      moved += run - 1;
    }
    i = end;
  }
  return moved;
}
