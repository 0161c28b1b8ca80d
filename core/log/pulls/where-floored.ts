import { boostOf } from '../boost-of.ts';
import { channelOf, type Log } from '../channel.ts';
import { fullLevel, fullSpans } from '../pedal/full-throttle.ts';
import { plateBy, withoutClosings } from '../pedal/plate-closings.ts';
import { withoutCreep } from '../pedal/plate-creeps.ts';
import type { QuantityId } from '../quantity.ts';
import { boostSpans } from '../rises/boost-spans.ts';
import { risingSpans } from '../rises/rising-spans.ts';
import type { EndedSpan } from '../span.ts';
import { spreadOf } from '../spread.ts';
import { usualStep } from '../time/time-axis.ts';

/**
 * Spans at full throttle and what told them. Pedal before throttle, since a plate may close on the engine's own
 * account. A pedal that moves but never gets to its stop says that there was no full throttle.
 *
 * @param ratioOf  engine speed over vehicle speed, where it is asked for; null where none is logged
 */
export function fullThrottleOf(
  log: Log,
  engineSpeed: Float64Array,
  ratioOf: () => Float64Array | null,
): { spans: readonly EndedSpan[]; by: QuantityId } {
  let moves = false;
  for (const quantity of ['pedal', 'throttle'] as const) {
    const channel = channelOf(log, quantity);
    if (!channel) continue;
    const level = fullLevel(channel.values, usualStep(log.time) || 0.05);
    if (level) {
      const spans = fullSpans(channel.values, level, log.time, log.segments);
      const plate = plateBy(channel.values, level.full);
      if (quantity === 'pedal') return { spans, by: quantity };
      const whole = withoutClosings(spans, plate, engineSpeed, log);
      return { spans: withoutCreep(whole, channel.values, level.full, log.time, log.segments), by: quantity };
    }
    moves ||= spreadOf(channel.values).max - spreadOf(channel.values).min > 0.1;
  }
  if (moves) return { spans: [], by: 'pedal' };
  const boost = boostOf(log)?.values ?? null;
  const byBoost = boost && boostSpans(boost, engineSpeed, log.time, log.segments);
  if (byBoost) return { spans: byBoost, by: 'boost' };
  const spans = risingSpans({ engineSpeed, ratio: ratioOf(), boost, time: log.time, segments: log.segments });
  return { spans, by: 'engineSpeed' };
}
