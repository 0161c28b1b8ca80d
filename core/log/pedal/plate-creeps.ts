import type { EndedSpan, Span } from '../span.ts';

/** An engine breathes nearly as freely at this share of its plate's stop as at the stop (common practice). */
const nearlyOpen = 0.85;
/** A plate that stands there for longer was held there by the foot [s]. */
const longestCreep_s = 0.2;

/**
 * Begins spans where the plate is nearly open, not where it has crept the rest of the way: a plate that a motor drives
 * gets to its stop some tenths of a second after the foot. Only where rows in between show it creep.
 *
 * Check: 0.4, 0.8, 0.9, 0.94 and 0.97 of the stop, each 0.05 s: begins half way between the second and the third, in
 * place of the fifth.
 */
export function withoutCreep(
  spans: readonly EndedSpan[],
  opening: Float64Array,
  full: number,
  time: Float64Array,
  segments: readonly Span[],
): EndedSpan[] {
  const level = nearlyOpen * full;
  return spans.map((span) => {
    const { from } = span;
    const first = segments.find((s) => s.from <= from && from < s.to)?.from ?? from;
    if (span.startAt_s !== undefined || (span.startWithin_s ?? 0) > 0) return span;
    let i = from - 1;
    while (i >= first && (opening[i] ?? 0) >= level) i--;
    if (i < first || i === from - 1) return span;
    const low = opening[i] ?? Number.NaN;
    const before = time[i] ?? 0;
    const share = (level - low) / ((opening[i + 1] ?? 0) - low);
    const startAt_s = before + share * ((time[i + 1] ?? 0) - before);
    const isCreep = (time[from] ?? 0) - startAt_s <= longestCreep_s;
    return isCreep ? { ...span, startAt_s } : span;
  });
}
