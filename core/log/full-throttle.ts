import type { Span } from './time-axis.ts';

/** Where a pedal or throttle stands at its stop. */
export type FullLevel = {
  /** What full reads on this channel, as a share; 0.82 on one that never reads 1. */
  readonly full: number;
  /** A sample at or above this is at full throttle. */
  readonly threshold: number;
};

/** No channel's stop reads less than this (common practice: a throttle in degrees over 120 would). */
const lowestStop = 0.6;

/**
 * The stop of a pedal or throttle from the plateau that its highest samples form. Null where the file never
 * gets there.
 *
 * @param opening  share, one per sample, NaN allowed
 */
export function fullLevel(opening: Float64Array): FullLevel | null {
  const sorted = opening.filter((v) => !Number.isNaN(v)).sort();
  const n = sorted.length;
  if (n === 0) return null;
  // A spike or two above the stop must not raise it.
  const top = sorted[Math.max(0, n - 1 - Math.max(2, Math.floor(0.0005 * n)))] ?? 0;
  if (!(top >= lowestStop)) return null;
  const plateau = sorted.subarray(lowerBound(sorted, top - 0.05 * top));
  const full = plateau[plateau.length >> 1] ?? top;
  const deviations = plateau.map((v) => Math.abs(v - full)).sort();
  // Median deviation to standard deviation of a normal spread: 1.4826.
  const noise = 1.4826 * (deviations[deviations.length >> 1] ?? 0);
  const margin = Math.min(0.08, Math.max(0.03, (4 * noise) / full)) * full;
  return { full, threshold: full - margin };
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

/**
 * Spans at full throttle. A dip of one or two samples that stays near the stop is the sensor's noise and does
 * not part a span.
 */
export function fullSpans(
  opening: Float64Array,
  level: FullLevel,
  time: Float64Array,
  segments: readonly Span[],
): Span[] {
  const spans: Span[] = [];
  const shallow = level.threshold - 0.06 * level.full;
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
        if (!(v < shallow) && (i - lastFull <= 1 || dip <= 0.1)) continue;
        spans.push({ from, to: lastFull + 1 });
        from = -1;
      }
    }
    if (from >= 0) spans.push({ from, to: lastFull + 1 });
  }
  return spans;
}
