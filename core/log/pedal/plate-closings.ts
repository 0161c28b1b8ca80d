import type { Log } from '../channel.ts';
import type { EndedSpan } from '../span.ts';

/** A controller gives the torque back within this time [s] (common practice). */
const longestClosing_s = 0.9;
/** A foot that lifts lets the plate go below this share of its stop (common practice). */
const leastOpening = 0.2;
/** In gear engine speed does not fall further than this while torque is short (common practice). */
const mostFall = 0.97;

/** An opening, or the pressure behind it, and what it does not fall below while the engine's controls close it. */
export type Plate = { readonly values: Float64Array; readonly least: number };

/** The plate's own reading, which at its stop is `full`. */
export const plateBy = (opening: Float64Array, full: number): Plate => ({
  values: opening,
  least: leastOpening * full,
});

/**
 * Joins spans at full throttle that the engine's own controls parted: where no pedal is logged, a plate that closes part
 * of the way while the gear stays, and is wide open again soon, was closed for torque or traction, not by the foot.
 */
export function withoutClosings<T extends EndedSpan>(
  spans: readonly T[],
  plate: Plate,
  engineSpeed: Float64Array,
  log: Pick<Log, 'time' | 'segments'>,
): T[] {
  const joined: T[] = [];
  for (const span of spans) {
    const last = joined.at(-1);
    if (last && isClosing(last.to - 1, span.from, plate, engineSpeed, log)) {
      const { to, endAt_s, endWithin_s = 0 } = span;
      joined[joined.length - 1] = { ...last, to, endAt_s, endWithin_s };
    } else joined.push(span);
  }
  return joined;
}

function isClosing(
  from: number,
  to: number,
  { values, least }: Plate,
  engineSpeed: Float64Array,
  { time, segments }: Pick<Log, 'time' | 'segments'>,
): boolean {
  if ((time[to] ?? 0) - (time[from] ?? 0) > longestClosing_s) return false;
  if (!segments.some((s) => s.from <= from && to < s.to)) return false;
  for (let i = from + 1; i < to; i++) {
    if ((values[i] ?? 0) < least) return false;
    if ((engineSpeed[i] ?? 0) < mostFall * (engineSpeed[from] ?? 0)) return false;
  }
  return true;
}
