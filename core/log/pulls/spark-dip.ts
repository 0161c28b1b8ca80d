import { degrees } from '../../units/index.ts';
import { channelOf, type Log } from '../channel.ts';
import { rangeWithin } from '../range-within.ts';
import type { Span } from '../span.ts';
import { indexAt, medianOfThree } from '../speeds/speed-ratio.ts';

/**
 * Spark that falls by this much and comes back takes torque away; knock control takes back less at once, and a spark
 * table does not change so soon (common practice).
 */
const leastDip_rad = degrees(10);
/** How far before and after a sample the spark around it is looked at [s]. */
const around_s = [0.15, 0.3, 0.45, 0.6];
/** Spark goes from cruise to full load at the start of a pull [s]. */
const settles_s = 0.3;
/** Where knock explains this share of a dip it was knock. */
const knockShare = 0.5;

/**
 * First sample of a pull at which spark was taken back far and given again soon, as traction or torque control does;
 * null where it was not, where knock was the reason, or where no spark is logged.
 */
export function sparkDip(log: Log, pull: Span): number | null {
  const spark = channelOf(log, 'sparkAdvance')?.values;
  if (!spark) return null;
  const knock = channelOf(log, 'knockRetard')?.values;
  const { time } = log;
  const start = indexAt(time, (time[pull.from] ?? 0) + settles_s, pull.from, pull.to);
  // Nearly every pull ends here, ...
  const { low, high } = rangeWithin(spark, start, pull.to);
  if (!(high - low >= leastDip_rad)) return null;
  const highest = (i: number, sign: 1 | -1) =>
    around_s.reduce((most, s) => {
      const at = indexAt(time, (time[i] ?? 0) + sign * s, start, pull.to);
      const isInside = at > start && at < pull.to - 1;
      return isInside ? Math.max(most, medianOfThree(spark, at)) : most;
    }, Number.NEGATIVE_INFINITY);
  const ahead = highestAhead(spark, { from: start, to: pull.to });
  let behind = Number.NEGATIVE_INFINITY;
  for (let i = start + 1; i < pull.to - 1; i++) {
    const now = medianOfThree(spark, i);
    behind = Math.max(behind, now);
    // ... and of the others nearly every sample here.
    if (!(Math.min(behind, ahead[i - start] ?? 0) - now >= leastDip_rad)) continue;
    const dip = Math.min(highest(i, -1), highest(i, 1)) - now;
    if (dip >= leastDip_rad && !(Math.abs(knock?.[i] ?? 0) >= knockShare * dip)) return i;
  }
  return null;
}

/** The highest spark from each sample to the end of a span. */
function highestAhead(spark: Float64Array, { from, to }: Span): Float64Array {
  const ahead = new Float64Array(to - from).fill(Number.NEGATIVE_INFINITY);
  for (let i = to - 2; i > from; i--)
    ahead[i - from] = Math.max(ahead[i - from + 1] ?? Number.NEGATIVE_INFINITY, medianOfThree(spark, i));
  return ahead;
}
