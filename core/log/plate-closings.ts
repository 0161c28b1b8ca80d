import type { Log } from './channel.ts';
import type { EndedSpan } from './time-axis.ts';

/** A controller gives the torque back within this time [s] (common practice). */
const longestClosing_s = 0.9;
/** A foot that lifts lets the plate go below this share of its stop (common practice). */
const leastOpening = 0.2;
/** In gear engine speed does not fall further than this while torque is short (common practice). */
const mostFall = 0.97;

/**
 * Joins spans at full throttle that the engine's own controls parted: where no pedal is logged, a plate that closes part
 * of the way while the gear stays, and is wide open again soon, was closed for torque or traction, not by the foot.
 *
 * @param plate  opening, and what it reads at its stop
 */
export function withoutClosings(
  spans: readonly EndedSpan[],
  plate: { readonly values: Float64Array; readonly full: number },
  engineSpeed: Float64Array,
  log: Pick<Log, 'time' | 'segments'>,
): EndedSpan[] {
  const joined: EndedSpan[] = [];
  for (const span of spans) {
    const last = joined.at(-1);
    if (last && isClosing(last.to - 1, span.from, plate, engineSpeed, log))
      joined[joined.length - 1] = { ...span, from: last.from, startAt_s: last.startAt_s, ...startOf(last) };
    else joined.push(span);
  }
  return joined;
}

const startOf = ({ startWithin_s }: EndedSpan) => (startWithin_s === undefined ? {} : { startWithin_s });

function isClosing(
  from: number,
  to: number,
  { values, full }: { readonly values: Float64Array; readonly full: number },
  engineSpeed: Float64Array,
  { time, segments }: Pick<Log, 'time' | 'segments'>,
): boolean {
  if ((time[to] ?? 0) - (time[from] ?? 0) > longestClosing_s) return false;
  if (!segments.some((s) => s.from <= from && to < s.to)) return false;
  for (let i = from + 1; i < to; i++) {
    if ((values[i] ?? 0) < leastOpening * full) return false;
    if ((engineSpeed[i] ?? 0) < mostFall * (engineSpeed[from] ?? 0)) return false;
  }
  return true;
}
