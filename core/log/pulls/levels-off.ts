import { lineThrough } from '../rises/steady-rise.ts';
import type { Span } from '../span.ts';
import { indexAt } from '../speeds/speed-ratio.ts';

/** How long the last of a pull may stand at the limiter [s]; shorter is no more than noise. */
const held_s = [0.3, 0.45, 0.65, 0.9] as const;
/** The climb before it is taken over so long [s], the bend between both left out. */
const climb_s = 1;
const bend_s = 0.05;
/** An engine that runs out of breath climbs ever more slowly, but not within a tenth by so much (common practice). */
const levelShare = 0.2;
/** Slower than this share of engine speed per second nothing tells a level from a climb (common practice). */
const leastClimb = 0.02;
/** A slope that differs by so many of its standard deviations does so for a reason. */
const clear = 4;
/** The limiter stands at the highest engine speed of the log, but for its own swing. */
const nearHighest = 0.98;

/**
 * Engine speed [rad/s] at which the pull stands in its last moments, where it climbed until then and no higher engine
 * speed is in the log; null where it climbs to the end.
 *
 * @param engineSpeed  [rad/s]
 * @param time         [s], rising
 */
export function levelAtTop(engineSpeed: Float64Array, time: Float64Array, pull: Span): number | null {
  const end_s = time[pull.to - 1] ?? 0;
  const at = (s: number) => indexAt(time, s, pull.from, pull.to);
  for (const held of held_s) {
    const bend = end_s - held;
    const from = at(bend);
    const [before, until] = [at(bend - bend_s - climb_s), at(bend - bend_s)];
    if (until - before < 4 || pull.to - from < 4) continue;
    const level = lineThrough(engineSpeed, time, from, pull.to, end_s);
    const climb = lineThrough(engineSpeed, time, before, until, bend);
    if (!(climb.slope > leastClimb * level.level && level.slope < levelShare * climb.slope)) continue;
    const noise = Math.hypot(
      slopeError(engineSpeed, time, from, pull.to, end_s, level),
      slopeError(engineSpeed, time, before, until, bend, climb),
    );
    if (climb.slope - level.slope > clear * noise && isHighest(engineSpeed, level.level)) return level.level;
  }
  return null;
}

/** Standard deviation of the slope of a line through the samples, from what they stray from it. */
function slopeError(
  values: Float64Array,
  time: Float64Array,
  from: number,
  to: number,
  at: number,
  { level, slope }: { level: number; slope: number },
): number {
  let [n, st, stt, squares] = [0, 0, 0, 0];
  for (let i = from; i < to; i++) {
    const v = values[i] ?? Number.NaN;
    if (Number.isNaN(v)) continue;
    const t = (time[i] ?? 0) - at;
    n++;
    st += t;
    stt += t * t;
    squares += (v - level - slope * t) ** 2;
  }
  return Math.sqrt(squares / Math.max(1, n - 2) / Math.max(1e-12, stt - (st * st) / n));
}

function isHighest(engineSpeed: Float64Array, level: number): boolean {
  let above = 0;
  // A spike or two is no engine speed.
  for (const v of engineSpeed) if (nearHighest * v > level && ++above > 3) return false;
  return true;
}
