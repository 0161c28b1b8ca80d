import { channelOf, type Log } from '../channel.ts';
import { medianOf } from '../median.ts';
import { fastestFoot_s } from '../pedal/full-throttle.ts';
import { lineThrough } from '../rises/steady-rise.ts';
import type { Segment } from '../span.ts';
import { movingSpeedOf } from '../speeds/moving-speed.ts';
import { indexAt, withoutSpikes } from '../speeds/speed-ratio.ts';

/** In a longer gap a gear can be changed, or the foot lifted and the charge be back (common practice). */
const longestGap_s = 1.5;
/** A line through so much on either side, or as much of it as the foot stands still, tells how speed climbed there. */
const side_s = 0.5;
/** A foot that stays moves pedal or throttle by no more than their own noise (common practice). */
const sameOpening = 0.05;

/**
 * A log in which short gaps part nothing where speed goes on as it would at full throttle: behind the gap it is higher
 * by what its climb on both sides asks for, to less than the quickest lift of a foot would cost, and pedal and throttle,
 * where logged, stand as before. Elsewhere the foot may have lifted and come back, and nobody knows.
 */
export function acrossShortGaps(log: Log): Log {
  if (log.segments.length < 2) return log;
  const logged = (channelOf(log, 'engineSpeed') ?? movingSpeedOf(log))?.values;
  if (!logged) return log;
  const speed = withoutSpikes(logged);
  const segments: Segment[] = [];
  for (const segment of log.segments) {
    const before = segments.at(-1);
    if (!before || !goesOn(log, speed, before, segment)) segments.push(segment);
    else segments[segments.length - 1] = joined(before, segment);
  }
  return { ...log, segments };
}

function joined(before: Segment, behind: Segment): Segment {
  return { ...before, to: behind.to, gapsBefore: [...(before.gapsBefore ?? []), behind.from] };
}

function goesOn(log: Log, speed: Float64Array, before: Segment, behind: Segment): boolean {
  // A clock that started anew tells nothing of how long it stood.
  if ((before.countedOn_s ?? 0) !== (behind.countedOn_s ?? 0)) return false;
  const { time } = log;
  const left_s = time[before.to - 1] ?? 0;
  const right_s = time[behind.from] ?? 0;
  const gap_s = right_s - left_s;
  if (!(gap_s <= longestGap_s)) return false;
  let from = indexAt(time, left_s - side_s, before.from, before.to);
  let to = indexAt(time, right_s + side_s, behind.from, behind.to);
  for (const quantity of ['pedal', 'throttle'] as const) {
    const opening = channelOf(log, quantity)?.values;
    if (!opening) continue;
    const last = medianOf(opening, Math.max(from, before.to - 3), before.to);
    const next = medianOf(opening, behind.from, Math.min(to, behind.from + 3));
    if (!(Math.abs(next - last) <= sameOpening)) return false;
    const moves = (i: number, level: number) => Math.abs((opening[i] ?? level) - level) > 2 * sameOpening;
    for (let i = before.to - 1; i >= from; i--) if (moves(i, last)) from = i + 1;
    for (let i = behind.from; i < to; i++) if (moves(i, next)) to = i;
  }
  const left = lineThrough(speed, time, from, before.to, left_s);
  const right = lineThrough(speed, time, behind.from, to, right_s);
  const climb = (left.slope + right.slope) / 2;
  const short = climb * gap_s - (right.level - left.level);
  return left.slope > 0 && right.slope > 0 && Math.abs(short) < fastestFoot_s * climb;
}
