import { upperMedian } from '../median.ts';
import type { EndedSpan, Span } from '../span.ts';
import { indexAt, medianOfThree } from '../speeds/speed-ratio.ts';
import { usualStep } from '../time/time-axis.ts';

/** Where a pedal or throttle stands at its stop. */
export type FullLevel = {
  /** What full reads on this channel, as a share; 0.82 on one that never reads 1. */
  readonly full: number;
  /** A sample at or above this is at full throttle. */
  readonly threshold: number;
  /** Standard deviation of one sample at the stop. */
  readonly noise: number;
};

/** No channel's stop reads less than this (common practice: a plate in degrees over 130 would). */
const lowestStop = 0.6;
/** A pedal within this share of its stop is floored: the last of the travel changes nothing. */
const nearFull = 0.05;
const deepestMargin = 0.12;

/**
 * The stop of a pedal or throttle, from the highest plateau that it holds. Null where the file never
 * gets there.
 *
 * @param opening  share, one per sample, NaN allowed
 * @param step_s   usual time from sample to sample
 */
export function fullLevel(opening: Float64Array, step_s: number): FullLevel | null {
  const held = heldLevel(opening, Math.max(3, Math.round(shortestPlateau_s / step_s)));
  if (!(held >= lowestStop)) return null;
  const noise = plateauNoise(opening, 0.9 * held);
  // The level that most samples lie around, from what was held up to as far above it as noise carries.
  const reach = Math.max(0.01 * held, 1.5 * noise);
  const sorted = sortedSample(opening, 0.98 * held - reach);
  let full = held;
  let most = 0;
  for (let level = held - 0.01 * held; level <= held + 5 * noise + 0.02 * held; level += 0.2 * reach) {
    const inside = lowerBound(sorted, level + reach) - lowerBound(sorted, level - reach);
    if (inside >= most) {
      most = inside;
      full = level;
    }
  }
  const plateau = sorted.subarray(lowerBound(sorted, full - reach), lowerBound(sorted, full + reach));
  full = plateau[plateau.length >> 1] ?? full;
  const margin = Math.min(deepestMargin * full, Math.max(nearFull * full, 4 * noise));
  return { full, threshold: full - margin, noise };
}

/** A plateau shorter than this makes no pull, so a spike or a sweep of the plate at rest does not set the stop. */
const shortestPlateau_s = 0.7;

/**
 * The highest level that the channel holds for `count` samples on end: the largest of all windows' smallest
 * values, single samples smoothed away. Keeps the candidates for the smallest in a queue, so each sample is
 * looked at twice at most; most of a log is passed over by the one sample in `count` that ends a window.
 */
function heldLevel(opening: Float64Array, count: number): number {
  const queue = new Int32Array(opening.length);
  const levels = new Float64Array(opening.length);
  let head = 0;
  let tail = 0;
  let best = Number.NaN;
  let run = 0;
  const levelAt = (i: number) =>
    i > 0 && i < opening.length - 1 ? medianOfThree(opening, i) : (opening[i] ?? Number.NaN);
  for (let i = 0; i < opening.length; i++) {
    // No window with a sample below the best can be better, and neither can one that would end with such a sample.
    while (run === 0 && levelAt(i + count - 1) <= best) i += count;
    const v = levelAt(i);
    if (Number.isNaN(v) || v <= best) {
      head = tail = 0;
      run = 0;
      continue;
    }
    run++;
    while (tail > head && (levels[tail - 1] ?? 0) >= v) tail--;
    levels[tail] = v;
    queue[tail++] = i;
    if ((queue[head] ?? 0) <= i - count) head++;
    const low = levels[head] ?? 0;
    if (run >= count && !(low <= best)) best = low;
  }
  return best;
}

/** What reaches `least` of up to 200,000 evenly placed samples, in order: sorting a million costs more than reading them. */
function sortedSample(values: Float64Array, least: number): Float64Array {
  const stride = Math.max(1, Math.floor(values.length / 200_000));
  const picked = new Float64Array(Math.ceil(values.length / stride));
  let n = 0;
  for (let i = 0; i < values.length; i += stride) {
    const v = values[i] ?? Number.NaN;
    if (v >= least) picked[n++] = v;
  }
  return picked.subarray(0, n).sort();
}

/** Noise from step to step, where the channel is high: a plateau's own slope hardly adds to it. */
function plateauNoise(opening: Float64Array, above: number): number {
  const steps = new Float64Array(20_000);
  let count = 0;
  for (let i = 2; i < opening.length && count < steps.length; i++) {
    const c = opening[i] as number;
    if (!(c > above)) continue;
    const a = opening[i - 2] as number;
    const b = opening[i - 1] as number;
    if (a > above && b > above) steps[count++] = Math.abs(a - 2 * b + c);
  }
  const usual = count > 0 ? upperMedian(steps.subarray(0, count)) : 0;
  // Second differences have sqrt(6) times the noise; median to standard deviation is 1.4826 (normal spread).
  return (1.4826 * usual) / Math.sqrt(6);
}

function lowerBound(sorted: Float64Array, value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const mid = (low + high) >> 1;
    if ((sorted[mid] ?? 0) < value) low = mid + 1;
    else high = mid;
  }
  return low;
}

/** A dip this long that stays near the stop is the sensor, not the foot. */
const shortestDip_s = 0.1;

/** No foot lifts and floors the pedal again within this time (common practice): a sample that fell out does. */
export const fastestFoot_s = 0.22;

/**
 * Spans at full throttle. A dip of a sample or two that stays near the stop is the sensor's noise and does not
 * part a span; neither does one sample that is missing or fell to nothing.
 */
export function fullSpans(
  opening: Float64Array,
  level: FullLevel,
  time: Float64Array,
  segments: readonly Span[],
): EndedSpan[] {
  const spans: Span[] = [];
  const shallow = level.threshold - Math.max(0.04 * level.full, 2 * level.noise);
  for (const segment of segments) {
    let from = -1;
    let lastFull = -1;
    for (let i = segment.from; i < segment.to; i++) {
      const v = opening[i] ?? Number.NaN;
      if (v >= level.threshold) {
        if (from < 0) from = i;
        lastFull = i;
      } else if (from >= 0) {
        const dip = (time[i] ?? 0) - (time[lastFull] ?? 0);
        if (!(v < shallow) && (i - lastFull <= 1 || dip <= shortestDip_s)) continue;
        const next = opening[i + 1] ?? Number.NaN;
        const isDropout =
          i - lastFull === 1 &&
          i + 1 < segment.to &&
          next >= level.threshold &&
          (time[i + 1] ?? 0) - (time[lastFull] ?? 0) <= fastestFoot_s;
        if (isDropout) continue;
        spans.push(trimmed(opening, level, time, segment, { from, to: lastFull + 1 }));
        from = -1;
      }
    }
    if (from >= 0) spans.push(trimmed(opening, level, time, segment, { from, to: lastFull + 1 }));
  }
  const hold_s = holdOf(opening, time);
  return hold_s === 0 ? spans : spans.map((span) => earlier(span, time, segments, hold_s));
}

/** A channel that renews its value this much slower than the file is one that holds it. */
const slowerThanFile = 1.8;
const shortestHold_s = 0.1;
/** Slower than once a second no pedal is renewed, and a few changes tell nothing of how often. */
const longestHold_s = 1.1;
const fewestChanges = 12;
/** Share of the times between changes that may be shorter: a ramp changes with every renewal. */
const quickest = 0.1;

/** Of all changes so many come with the beat: a foot that rests and moves now and then has none (common practice). */
const onBeat = 0.33;
/** A pedal that creeps changes by one of the steps that it is written in, however often it is read. */
const leap = 1.6;

/** How long the channel holds each value [s], 0 where it is renewed with about every row. */
function holdOf(opening: Float64Array, time: Float64Array): number {
  const changes: number[] = [];
  let step = Number.POSITIVE_INFINITY;
  for (let i = 1; i < opening.length && changes.length < 5000; i++) {
    const jump = Math.abs((opening[i] ?? 0) - (opening[i - 1] ?? 0));
    if (!(jump > 0)) continue;
    changes.push(i);
    if (jump < step) step = jump;
  }
  const apart = new Float64Array(changes.length);
  let count = 0;
  for (let k = 1; k < changes.length; k++) {
    const i = changes[k] as number;
    if (Math.abs((opening[i] ?? 0) - (opening[i - 1] ?? 0)) > leap * step)
      apart[count++] = (time[i] ?? 0) - (time[changes[k - 1] as number] ?? 0);
  }
  const times = apart.subarray(0, count).sort();
  const hold = times[Math.floor(quickest * times.length)] ?? 0;
  if (times.length < fewestChanges || hold > longestHold_s) return 0;
  if (!((times[Math.floor(onBeat * times.length)] ?? 0) < 1.4 * hold)) return 0;
  return hold > shortestHold_s && hold > slowerThanFile * (usualStep(time) || 0) ? hold : 0;
}

/** A held value shows the foot late by up to a renewal, half of one on average. */
function earlier(span: Span, time: Float64Array, segments: readonly Span[], hold_s: number): EndedSpan {
  const first = segments.find((s) => s.from <= span.from && span.from < s.to)?.from ?? 0;
  const at = (i: number) => indexAt(time, (time[i] ?? 0) - hold_s / 2, first, i);
  // A span that begins or ends with its segment shows no foot there.
  const from = span.from === first ? span.from : at(span.from);
  const to = segments.some((s) => s.to === span.to) ? span.to : Math.max(from + 1, at(span.to - 1) + 1);
  return { from, to, startWithin_s: hold_s / 2, endWithin_s: hold_s / 2 };
}

/**
 * A noisy pedal's threshold lies low, so that no dip parts a pull; its ends are where the ramp really meets the
 * plateau. The ramp's own line tells where that is, else one low sample beside it would pass for ramp and cost a
 * slow log a tenth of a second.
 */
function trimmed(
  opening: Float64Array,
  level: FullLevel,
  time: Float64Array,
  segment: Span,
  rough: Span,
): Span {
  const edge = level.full - Math.max(nearFull * level.full, 1.5 * level.noise);
  const isLow = (i: number) => !((opening[i] ?? 0) >= edge);
  const first = rampMeets(opening, level.full, time, segment, rough.from, -1);
  const last = rampMeets(opening, level.full, time, segment, rough.to - 1, 1);
  let { from, to } = rough;
  while (from < rough.to - 1 && isLow(from) && (time[from] ?? 0) < first) from++;
  while (to > from + 1 && isLow(to - 1) && (time[to - 1] ?? 0) > last) to--;
  return { from, to };
}

/**
 * Time at which the ramp beside a plateau meets the stop: a line through the two samples beyond the plateau's last,
 * or through that and the next, whichever is steeper, since the ramp may be over within one step. Where no ramp is
 * seen every low sample counts as ramp.
 *
 * @param last  last sample of the plateau on the side of the ramp
 * @param way   1 for the ramp after the plateau, -1 for the one before
 */
function rampMeets(
  opening: Float64Array,
  full: number,
  time: Float64Array,
  segment: Span,
  last: number,
  way: 1 | -1,
): number {
  const isInside = (i: number) => i >= segment.from && i < segment.to;
  let meets = Number.NEGATIVE_INFINITY;
  for (const from of [last, last + way]) {
    if (!isInside(from) || !isInside(from + way)) continue;
    const high = opening[from] ?? Number.NaN;
    const low = opening[from + way] ?? Number.NaN;
    const step = Math.abs((time[from + way] ?? 0) - (time[from] ?? 0));
    if (high > low) meets = Math.max(meets, way * (time[from] ?? 0) - ((full - high) / (high - low)) * step);
  }
  return way * meets;
}
