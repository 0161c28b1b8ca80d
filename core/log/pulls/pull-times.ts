import type { Log } from '../channel.ts';
import type { EndedSpan } from '../span.ts';

/** Rows this far apart leave open by more than an end is held to (0.15 s) when the foot moved [s]. */
const slowRows_s = 0.15;
/**
 * Rows this far apart leave open a good part of it [s]. Some take the foot's own moment for an end, others the first row
 * that shows it: a quarter of a row lies between the two.
 */
const middlingRows_s = 0.06;

/**
 * When a pull began and ended [s]: the times of its first and last sample. Where rows lie far apart the foot met the
 * stop somewhere between the last row before and the first one at full throttle, and left it likewise: then the middle
 * between the two, which is off by half a row at most. A moment that is known between quicker rows is held to
 * a quarter of one towards those that show it.
 *
 * Check: rows each 0.2 s, full throttle from 3.0 to 8.0 s: 2.9 to 8.1 s.
 */
export function pullTimes(log: Pick<Log, 'time' | 'segments'>, span: EndedSpan) {
  const { from, to } = span;
  const at = (i: number) => log.time[i] ?? 0;
  const segment = log.segments.find((s) => s.from <= from && from < s.to) ?? { from, to };
  const open = (step: number) => (step >= slowRows_s ? step / 2 : step >= middlingRows_s ? step / 4 : 0);
  // Over a gap nothing is known of the foot: no more than the pull's own step is split.
  const usual = (at(to - 1) - at(from)) / Math.max(1, to - 1 - from);
  const before = from > segment.from ? Math.min(at(from) - at(from - 1), usual) : 0;
  const after = to < segment.to ? Math.min(at(to) - at(to - 1), usual) : 0;
  const quarter = (step: number) => (step >= slowRows_s ? 0 : step / 4);
  const { startAt_s, endAt_s } = span;
  return {
    start_s: startAt_s === undefined ? at(from) - open(before) : startAt_s + quarter(before),
    end_s: endAt_s === undefined ? at(to - 1) + open(after) : endAt_s - quarter(after),
  };
}
