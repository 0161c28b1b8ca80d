import type { Channel, Log } from '../channel.ts';
import { medianOf } from '../median.ts';
import { speedLag } from '../speeds/speed-lag.ts';
import { indexAt } from '../speeds/speed-ratio.ts';
import type { Draft } from './pull-draft.ts';

/** Engine speed over vehicle speed in a pull [rad/m], a vehicle speed that comes late set right; NaN where none is logged. */
export function ratioOnTime(log: Log, engineSpeed: Float64Array, road: Channel | null, draft: Draft): number {
  const segment = log.segments.find((s) => s.from <= draft.from && draft.from < s.to);
  if (!road || !segment) return draft.ratio;
  const { lag } = speedLag(log.time, engineSpeed, road.values, draft, segment);
  if (lag === 0) return draft.ratio;
  const ratios = new Float64Array(draft.to - draft.from).fill(Number.NaN);
  for (let i = draft.from; i < draft.to; i++) {
    const later = indexAt(log.time, (log.time[i] ?? 0) + lag, segment.from, segment.to);
    if (later < segment.to)
      ratios[i - draft.from] = (engineSpeed[i] ?? Number.NaN) / (road.values[later] ?? Number.NaN);
  }
  const ratio = medianOf(ratios, 0, ratios.length);
  return Number.isNaN(ratio) ? draft.ratio : ratio;
}
