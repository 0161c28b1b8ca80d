import { channelOf, type Log, median } from '../../log/index.ts';
import { numbersWithin } from '../numbers-within.ts';
import type { CoastDownWindow } from './coast-down.ts';
import { foot, idle_rad_s, isDriven } from './in-neutral.ts';

/** Grid on which rolls are sought, and the span over which speed must fall [s]. */
const grid_s = 0.5;
const span_s = 2;
/** No car slows harder in neutral below 250 km/h; braking does (common practice). [m/s^2] */
const hardest = 1.2;
/** Below walking pace speed signals end, and a foot goes to the brake. [m/s] */
const slowest = 2.5;
/** What fitCoastDown asks for. [m/s] */
const leastDrop = 8;

/**
 * Stretches in which a car rolls in neutral: speed falls by 8 m/s or more, never harder than rolling does, the foot is
 * off and the engine idles and is not turned by the road, as far as the log tells.
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
      const last = rows.at(-1);
      if (at === from && last) {
        // Between the readings of a slow log nothing is new.
        rows.push(last);
        continue;
      }
      const isFree = !(engine && level(engine.values) > idle_rad_s) && !(pedal && level(pedal.values) > foot);
      rows.push({ from, v: level(speed.values), isFree });
    }
    const steps = Math.round(span_s / grid_s);
    const braked = steps / 2;
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
      // The cell at the start may hold some of the driving before it: its median is the roll's all the same. A span
      // passes with a second of braking in it, and that would weigh as much as the slowest ten seconds.
      const [from, to, end] = [rows[first + 1], rows[last - 1 - braked], rows[last - braked]];
      const roll = from && to && end && from.v - to.v >= leastDrop && { from: from.from, to: end.from };
      if (roll && !isDriven(log, speed.values, roll)) found.push(roll);
      i = last;
    }
  }
  return found;
}
