import { channelOf, indexAt, type Log, median } from '../log/index.ts';
import type { PullWindow } from './pull-window.ts';
import type { SlopeErrors } from './smoothing/slope-estimate.ts';

/** A change into a higher gear takes a fifth or more off engine speed; before a pull from cruising it hardly falls. */
const leastFall = 0.1;
/** Share of that second's readings that lie above: spikes are fewer. */
const leastShare = 0.2;
/** Over so long before a pull [s]: a change by hand lasts half a second to one (common practice). */
const before_s = 1;
/** A pull's ends have samples on one side only; where their slope errs by more than twice the usual it is not told. */
const mostError = 2;

/** Whether engine speed fell into the pull, as after a change into a higher gear. */
export function isAfterFall(log: Log, window: PullWindow): boolean {
  const engine = channelOf(log, 'engineSpeed');
  const segment = log.segments.find((s) => s.from <= window.from && window.from < s.to);
  if (!engine || !segment || window.useFrom < window.from) return false;
  const start = log.time[window.from] as number;
  const from = indexAt(log.time, start - before_s, segment.from, window.from);
  let above = 0;
  let count = 0;
  const least = (engine.values[window.from] as number) * (1 + leastFall);
  for (let i = from; i < window.from; i++) {
    const w = engine.values[i] as number;
    if (!Number.isFinite(w)) continue;
    count++;
    if (w > least) above++;
  }
  return above > leastShare * count;
}

/**
 * Where the power of a pull that follows on a gear change is told from. Clutch and torque come back within tenths of a
 * second, with nothing before them that the slope could lean on.
 *
 * @param curve   of the pull at `time`, which begins with the pull's first moment that may be told
 * @param latest  instant from which power is told however badly it is known [s]
 * @returns       index into `time`
 */
export function settledAt(
  { slopeVariance }: Pick<SlopeErrors, 'slopeVariance'>,
  time: Float64Array,
  latest: number,
): number {
  const most = mostError ** 2 * median(slopeVariance);
  const isTold = (i: number) => (slopeVariance[i] as number) <= most;
  let i = 0;
  while (!isTold(i) && (time[i + 1] ?? Number.POSITIVE_INFINITY) <= latest) i++;
  return i;
}
