import type { EndedSpan, Span } from '../span.ts';
import { indexAt } from '../speeds/speed-ratio.ts';
import { momentsOf, momentTable } from './foot-fit.ts';
import { shiftAfter, shiftBefore, startAfterShift } from './gear-shift.ts';
import { heldOnLimiter, standsAfter } from './limiter-hold.ts';
import type { Rise } from './rise.ts';
import { kneeTime } from './steady-rise.ts';

/** The foot takes this long to lift; the knee lies in the middle (common practice). */
const halfLift_s = 0.1;
/**
 * The shafts unwind as torque falls, so that engine speed falls sooner than the car's own: a lift is seen earlier by so
 * much [s] than on the stiff driveline that the fit knows; half of what soft shafts of generated drives make of it.
 */
const unwinds_s = 0.04;
/** What a driveline that swings and a logger's steps leave over beside the model [rad/s] (common practice). */
const startMisfit = 2.5;
const liftMisfit = 1;
/**
 * The travels that are tried spread wider than those that are driven: nineteen starts of twenty lie within this share
 * of what they leave open (generated drives).
 */
const drivenShare = 0.7;
/** From the knee to the stop of the pedal, on the middle of quick and slow feet (common practice). */
const kneeToFull_s = 0.1;

/**
 * Moves the ends of a rise to where the foot met the stop and left it, or to the gear change beside it.
 *
 * @param highest  top of the highest rise of the log, where a limiter may stand [rad/s]
 */
export function withEnds(
  engineSpeed: Float64Array,
  time: Float64Array,
  rise: Rise,
  highest: number,
): EndedSpan {
  const { segment } = rise;
  const start = time[rise.from] ?? 0;
  const end = time[rise.to - 1] ?? 0;
  let from = rise.from;
  let startAt_s: number | undefined;
  let endAt_s: number | undefined;
  let startWithin_s = 0;
  let endWithin_s = 0;
  const lowest = shiftBefore(engineSpeed, time, rise);
  if (lowest !== null) {
    const moment = startAfterShift(engineSpeed, time, rise, lowest);
    startWithin_s = moment.within_s;
    startAt_s = moment.at_s;
    from = indexAt(time, startAt_s, lowest, rise.to);
  } else if (start - (time[segment.from] ?? 0) < 0.4) from = segment.from;
  else {
    const knee = kneeTime(engineSpeed, time, segment, {
      from_s: start - 0.6,
      to_s: start + 0.5,
      before_s: 0.5,
      after_s: 0.4,
      turn: 1,
    });
    const table = momentTable(engineSpeed, time, segment, {
      way: 'down',
      as: 'speed',
      from_s: knee - 0.2,
      to_s: knee + 0.2,
      before_s: 0.3,
      after_s: 0.4,
      noise: startMisfit,
    });
    const moment = momentsOf([table])[0];
    startWithin_s = drivenShare * (moment?.within_s ?? 0);
    startAt_s = moment?.at_s ?? knee + kneeToFull_s;
    from = indexAt(time, startAt_s, segment.from, segment.to);
  }
  let to = rise.to;
  const peak = shiftAfter(engineSpeed, time, rise);
  if (peak !== null) to = peak + 1;
  else if ((time[segment.to - 1] ?? 0) - end < 0.4) to = segment.to;
  else {
    const held = heldOnLimiter(engineSpeed, time, rise, highest);
    const lift = held ?? liftTime(engineSpeed, time, segment, end);
    endWithin_s = Math.max(
      lift.within_s,
      held ? 0 : standsAfter(engineSpeed, time, rise, highest, lift.at_s),
    );
    endAt_s = lift.at_s;
    to = Math.max(from + 1, indexAt(time, endAt_s + 1e-9, segment.from, segment.to));
  }
  return { from, to, startAt_s, endAt_s, startWithin_s, endWithin_s };
}

/** Last moment before the foot lifts near `end`. */
function liftTime(
  engineSpeed: Float64Array,
  time: Float64Array,
  segment: Span,
  end: number,
): { at_s: number; within_s: number } {
  const knee = kneeTime(engineSpeed, time, segment, {
    from_s: end - 0.4,
    to_s: end + 0.5,
    before_s: 0.4,
    after_s: 0.3,
    turn: -1,
  });
  const table = momentTable(engineSpeed, time, segment, {
    way: 'lift',
    as: 'speed',
    from_s: knee - 0.2,
    to_s: knee + 0.2,
    before_s: 0.4,
    after_s: 0.3,
    noise: liftMisfit,
  });
  const moment = momentsOf([table])[0] ?? { at_s: knee - halfLift_s, within_s: 0 };
  return { ...moment, at_s: moment.at_s + unwinds_s };
}
