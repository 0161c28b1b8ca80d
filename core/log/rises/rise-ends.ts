import type { EndedSpan, Span } from '../span.ts';
import { indexAt } from '../speeds/speed-ratio.ts';
import { type MomentTable, momentsOf, momentTable } from './foot-fit.ts';
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

/** Where a rise begins as far as engine speed alone tells; `table` holds the moments that come into question. */
type Start = {
  readonly from: number;
  readonly at_s?: number;
  readonly within_s?: number;
  readonly table?: MomentTable | null;
};

/**
 * Moves the ends of rises to where the foot met the stop and left it, or to the gear change beside them. All starts
 * of a log together tell whether its driver's foot is quick.
 *
 * @param highest  top of the highest rise of the log, where a limiter may stand [rad/s]
 */
export function withEnds(
  engineSpeed: Float64Array,
  time: Float64Array,
  rises: readonly Rise[],
  highest: number,
): EndedSpan[] {
  const starts = rises.map((rise) => startOf(engineSpeed, time, rise));
  const moments = momentsOf(starts.map((start) => start.table ?? null));
  return rises.map((rise, i) => {
    const { segment } = rise;
    const start = starts[i] as Start;
    const moment = moments[i];
    const startAt_s = moment?.at_s ?? start.at_s;
    const startWithin_s = moment ? drivenShare * moment.within_s : (start.within_s ?? 0);
    const from = moment ? indexAt(time, moment.at_s, segment.from, segment.to) : start.from;
    return { from, startAt_s, startWithin_s, ...endOf(engineSpeed, time, rise, highest, from) };
  });
}

function startOf(engineSpeed: Float64Array, time: Float64Array, rise: Rise): Start {
  const { segment } = rise;
  const start = time[rise.from] ?? 0;
  const lowest = shiftBefore(engineSpeed, time, rise);
  if (lowest !== null) {
    const moment = startAfterShift(engineSpeed, time, rise, lowest);
    return { ...moment, from: indexAt(time, moment.at_s, lowest, rise.to) };
  }
  if (start - (time[segment.from] ?? 0) < 0.4) return { from: segment.from };
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
  const at_s = knee + kneeToFull_s;
  return { from: indexAt(time, at_s, segment.from, segment.to), at_s, table };
}

function endOf(
  engineSpeed: Float64Array,
  time: Float64Array,
  rise: Rise,
  highest: number,
  from: number,
): Pick<EndedSpan, 'to' | 'endAt_s' | 'endWithin_s'> {
  const { segment } = rise;
  const end = time[rise.to - 1] ?? 0;
  const peak = shiftAfter(engineSpeed, time, rise);
  if (peak !== null) return { to: peak + 1, endWithin_s: 0 };
  if ((time[segment.to - 1] ?? 0) - end < 0.4) return { to: segment.to, endWithin_s: 0 };
  const held = heldOnLimiter(engineSpeed, time, rise, highest);
  const lift = held ?? liftTime(engineSpeed, time, segment, end);
  const stands_s = held ? 0 : standsAfter(engineSpeed, time, rise, highest, lift.at_s);
  const to = Math.max(from + 1, indexAt(time, lift.at_s + 1e-9, segment.from, segment.to));
  return { to, endAt_s: lift.at_s, endWithin_s: Math.max(lift.within_s, stands_s) };
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
