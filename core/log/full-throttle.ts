import type { Span } from './time-axis.ts';

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
const nearFull = 0.03;
const deepestMargin = 0.12;

/**
 * The stop of a pedal or throttle from the plateau that its highest samples form. Null where the file never
 * gets there.
 *
 * @param opening  share, one per sample, NaN allowed
 */
export function fullLevel(opening: Float64Array): FullLevel | null {
  const sorted = sortedSample(opening);
  const n = sorted.length;
  if (n === 0) return null;
  // A spike or two above the stop must not raise it.
  const top = sorted[Math.max(0, n - 1 - Math.min(20, Math.max(2, Math.floor(0.0005 * n))))] ?? 0;
  if (!(top >= lowestStop)) return null;
  const noise = plateauNoise(opening, 0.8 * top);
  // The level that most samples lie around, between the top and as far below it as noise carries.
  const reach = Math.max(0.01 * top, 1.5 * noise);
  let full = top;
  let most = 0;
  for (let level = top; level >= top - 4 * noise - 0.02 * top; level -= 0.2 * reach) {
    const inside = lowerBound(sorted, level + reach) - lowerBound(sorted, level - reach);
    if (inside > most) {
      most = inside;
      full = level;
    }
  }
  const plateau = sorted.subarray(lowerBound(sorted, full - reach), lowerBound(sorted, full + reach));
  full = plateau[plateau.length >> 1] ?? full;
  const margin = Math.min(deepestMargin * full, Math.max(nearFull * full, 4 * noise));
  return { full, threshold: full - margin, noise };
}

/** Up to 200,000 evenly placed samples in order: sorting a million costs more than reading them. */
function sortedSample(values: Float64Array): Float64Array {
  const stride = Math.max(1, Math.floor(values.length / 200_000));
  const picked = new Float64Array(Math.ceil(values.length / stride));
  let n = 0;
  for (let i = 0; i < values.length; i += stride) {
    const v = values[i] ?? Number.NaN;
    if (!Number.isNaN(v)) picked[n++] = v;
  }
  return picked.subarray(0, n).sort();
}

/** Noise from step to step, where the channel is high: a plateau's own slope hardly adds to it. */
function plateauNoise(opening: Float64Array, above: number): number {
  const steps: number[] = [];
  for (let i = 2; i < opening.length; i++) {
    const a = opening[i - 2] ?? Number.NaN;
    const b = opening[i - 1] ?? Number.NaN;
    const c = opening[i] ?? Number.NaN;
    if (a > above && b > above && c > above) steps.push(Math.abs(a - 2 * b + c));
    if (steps.length >= 20_000) break;
  }
  steps.sort((a, b) => a - b);
  // Second differences have sqrt(6) times the noise; median to standard deviation is 1.4826 (normal spread).
  return (1.4826 * (steps[steps.length >> 1] ?? 0)) / Math.sqrt(6);
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

/**
 * Spans at full throttle. A dip of a sample or two that stays near the stop is the sensor's noise and does not
 * part a span; neither does one missing sample.
 */
export function fullSpans(
  opening: Float64Array,
  level: FullLevel,
  time: Float64Array,
  segments: readonly Span[],
): Span[] {
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
        spans.push(trimmed(opening, level, from, lastFull));
        from = -1;
      }
    }
    if (from >= 0) spans.push(trimmed(opening, level, from, lastFull));
  }
  return spans;
}

/**
 * A noisy pedal's threshold lies low, so that no dip parts a pull; its ends are where the ramp really meets the
 * plateau's noise.
 */
function trimmed(opening: Float64Array, level: FullLevel, first: number, last: number): Span {
  const edge = level.full - Math.max(nearFull * level.full, 1.5 * level.noise);
  let from = first;
  let to = last;
  while (from < last && !((opening[from] ?? 0) >= edge)) from++;
  while (to > from && !((opening[to] ?? 0) >= edge)) to--;
  return { from, to: to + 1 };
}
