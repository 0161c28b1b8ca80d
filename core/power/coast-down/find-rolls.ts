import { channelOf, type Log, median } from '../../log/index.ts';
import { numbersWithin } from '../numbers-within.ts';
import type { CoastDownWindow } from './coast-down.ts';

/** Grid on which rolls are sought, and the span over which speed must fall [s]. */
const grid_s = 0.5;
const span_s = 2;
/** No car slows harder in neutral below 250 km/h; braking does (common practice). [m/s^2] */
const hardest = 1.2;
/** Below walking pace speed signals end, and a foot goes to the brake. [m/s] */
const slowest = 2.5;
/** An engine in neutral idles below this (common practice), 1500 rpm [rad/s]. */
const idle_rad_s = (1500 * Math.PI) / 30;
/** A foot on the pedal, as a share of its travel (common practice). */
const foot = 0.06;
/** What fitCoastDown asks for. [m/s] */
const leastDrop = 8;

/**
 * Stretches in which a car rolls in neutral: speed falls by 8 m/s or more, never harder than rolling does, the foot is
 * off and the engine idles, as far as the log tells.
 *
 * Without engine speed nothing tells neutral from a closed throttle in gear: whoever drove it must know.
 *
 * @returns  in the order of the file; empty where there is none
 */
export function findRolls(log: Log): CoastDownWindow[] {
  const speed = channelOf(log, 'gpsSpeed') ?? channelOf(log, 'vehicleSpeed');
  if (!speed) return [];
  const engine = channelOf(log, 'engineSpeed');
  const pedal = channelOf(log, 'pedal');
  const found: CoastDownWindow[] = [];
  for (const segment of log.segments) {
    // Rows so far apart show no roll.
    const seconds = (log.time[segment.to - 1] as number) - (log.time[segment.from] as number);
    if (seconds > span_s * (segment.to - segment.from)) continue;
    let at = segment.from;
    const rows: { readonly from: number; readonly v: number; readonly isFree: boolean }[] = [];
    for (let t = log.time[at] as number; at < segment.to; t += grid_s) {
      const from = at;
      while (at < segment.to && (log.time[at] as number) < t + grid_s) at++;
      const level = (values: Float64Array) => median(numbersWithin(values, from, at));
      const isFree = !(engine && level(engine.values) > idle_rad_s) && !(pedal && level(pedal.values) > foot);
      rows.push({ from, v: level(speed.values), isFree });
    }
    const steps = Math.round(span_s / grid_s);
    const isRoll = (i: number) => {
      const [now, next] = [rows[i], rows[i + steps]];
      if (!now || !next || !now.isFree || !next.isFree || !(next.v >= slowest)) return false;
      const slowing = (now.v - next.v) / span_s;
      return slowing > 0.01 && slowing <= hardest;
    };
    for (let i = 0; i < rows.length; i++) {
      if (!isRoll(i)) continue;
      const first = i;
      while (isRoll(i)) i++;
      const last = Math.min(i - 1 + steps, rows.length - 1);
      // The cell at either end may hold some of the driving beside it: its median is the roll's all the same.
      const [from, to, end] = [rows[first + 1], rows[last - 1], rows[last]];
      if (from && to && end && from.v - to.v >= leastDrop) found.push({ from: from.from, to: end.from });
      i = last;
    }
  }
  return found;
}
