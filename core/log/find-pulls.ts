import type { Note } from '../result/index.ts';
import { channelOf, type Log } from './channel.ts';
import { fullLevel, fullSpans } from './full-throttle.ts';
import type { Pull } from './pull.ts';
import type { Span } from './time-axis.ts';

/** What the car tells about its gears; all may be unknown. */
export type PullOptions = {
  readonly gearRatios?: readonly number[];
  readonly finalDrive?: number | null;
  readonly rollingRadius_m?: number | null;
  readonly pullGear?: number | null;
};

export type FoundPulls = { readonly pulls: readonly Pull[]; readonly warnings: readonly Note[] };

const shortest_s = 1;
const leastRise_rad_s = 40;

/**
 * Full-throttle pulls in a log, each in one gear.
 */
export function findPulls(log: Log, options: PullOptions = {}): FoundPulls {
  const rpm = channelOf(log, 'engineSpeed');
  if (!rpm) return { pulls: [], warnings: [{ code: 'log/no-engine-speed', facts: {} }] };
  const opening = channelOf(log, 'pedal') ?? channelOf(log, 'throttle');
  if (!opening) return { pulls: [], warnings: [{ code: 'log/no-pulls', facts: {} }] };
  const level = fullLevel(opening.values);
  if (!level) return { pulls: [], warnings: [{ code: 'log/no-pulls', facts: {} }] };
  const spans = fullSpans(opening.values, level, log.time, log.segments);
  const pulls: Pull[] = [];
  for (const span of spans) {
    const pull = pullOf(log, rpm.values, span, options);
    if (pull) pulls.push(pull);
  }
  return { pulls, warnings: pulls.length === 0 ? [{ code: 'log/no-pulls', facts: {} }] : [] };
}

function pullOf(log: Log, rpm: Float64Array, span: Span, options: PullOptions): Pull | null {
  const start_s = log.time[span.from] ?? 0;
  const end_s = log.time[span.to - 1] ?? 0;
  const first = rpm[span.from] ?? Number.NaN;
  const last = rpm[span.to - 1] ?? Number.NaN;
  if (end_s - start_s < shortest_s || !(last - first >= leastRise_rad_s)) return null;
  return {
    ...span,
    start_s,
    end_s,
    gear: options.pullGear ?? null,
    rpmFrom: (first * 30) / Math.PI,
    rpmTo: (last * 30) / Math.PI,
    complete: last / first > 1.3,
    flags: [],
  };
}
