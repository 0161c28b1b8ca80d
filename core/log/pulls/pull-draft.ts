import type { Log } from '../channel.ts';
import { medianOf } from '../median.ts';
import { lineThrough } from '../rises/steady-rise.ts';
import type { EndedSpan, Span } from '../span.ts';
import type { GearSpan } from './one-gear.ts';

/** Shorter full throttle is a stab, no pull (common practice). */
const shortest_s = 0.8;
/** Engine speed rises by so much at least, else it was a hill or a slipping clutch. */
const leastRise = 1.04;
const leastRise_rad_s = 20;
/**
 * Where pedal or throttle show full throttle, a foot that lifts again soon, in a high gear off boost, leaves 100 rpm: a
 * hill or a slipping clutch climbs more slowly than this share of engine speed per second (common practice).
 */
const leastRiseByFoot_rad_s = 8;
const leastClimbByFoot = 0.025;
/** Faster than any car in gear climbs [rad/s2], 5,000 rpm per second (common practice). */
const fastestRise = 520;
/** A usable span: 800 rpm, and no petrol engine's pull ends below 4,300 rpm unless it was cut (common practice). */
const usableSpan_rad_s = 84;
const lowestEnd_rad_s = 450;

/** A pull before it is known how it compares with the others. */
export type Draft = GearSpan & EndedSpan & { first: number; last: number; ratio: number };

export function draftOf(
  log: Log,
  engineSpeed: Float64Array,
  ratio: Float64Array | null,
  part: GearSpan,
  isByFoot: boolean,
): Draft | null {
  const duration = (log.time[part.to - 1] ?? 0) - (log.time[part.from] ?? 0);
  if (duration < shortest_s) return null;
  const first = speedAtEnd(engineSpeed, log.time, part, 'first');
  const last = speedAtEnd(engineSpeed, log.time, part, 'last');
  const rise = last - first;
  const isWide = rise >= leastRise_rad_s && last >= leastRise * first;
  const isQuick = rise >= leastRiseByFoot_rad_s && rise >= leastClimbByFoot * first * duration;
  if (!isWide && !(isByFoot && isQuick)) return null;
  if (rise / duration > fastestRise) return null;
  return { ...part, first, last, ratio: ratio ? medianOf(ratio, part.from, part.to) : Number.NaN };
}

/** Engine speed at one end of a span: the level there of a line through its outermost 0.3 s, against noise. */
function speedAtEnd(values: Float64Array, time: Float64Array, span: Span, end: 'first' | 'last'): number {
  const edge = end === 'first' ? span.from : span.to - 1;
  const at = time[edge] ?? 0;
  let [from, to] = end === 'first' ? [edge, edge + 4] : [edge - 3, edge + 1];
  while (end === 'first' && to < span.to && (time[to] ?? 0) - at <= 0.3) to++;
  while (end === 'last' && from > span.from && at - (time[from - 1] ?? 0) <= 0.3) from--;
  return lineThrough(values, time, Math.max(span.from, from), Math.min(span.to, to), at).level;
}

/**
 * Whether a pull reached a usable span, by itself and beside the others of its gear.
 *
 * @param top  highest end of all
 */
export function isComplete(draft: Draft, all: readonly Draft[], top: number): boolean {
  const rise = draft.last - draft.first;
  if (rise < usableSpan_rad_s || draft.last < lowestEnd_rad_s) return false;
  if (draft.last >= 0.85 * top) return true;
  const sameGear = all.filter((d) => !(Math.abs(d.ratio / draft.ratio - 1) > 0.08));
  const widest = sameGear.reduce((most, d) => Math.max(most, d.last - d.first), 0);
  return rise >= 0.65 * widest;
}
