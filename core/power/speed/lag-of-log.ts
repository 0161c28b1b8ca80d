import { median } from '../../log/index.ts';
import type { PullPower } from '../pull-power.ts';

/** How late the road speed of a log is. */
export type KnownLag = {
  /** By which it comes after engine speed [s]. */
  readonly lag: number;
  /** Standard uncertainty [s]. */
  readonly error: number;
};

/** Fewer pulls do not show how far each strays. */
const leastPulls = 3;
/** Slip under power looks like a lag in every pull alike; what that leaves does not average out [s] (common practice). */
const common_s = 0.02;
/** Scatter of a normal distribution over its median distance. */
const perMedian = 1.4826;

/**
 * By how much the road speed of a log comes late, from pulls worked out each on its own. Sensor, bus and filter are
 * the same in all of them, while one pull alone hardly tells a lag from slip, and least of all one that begins with a
 * gear change.
 *
 * @returns  null with fewer than three pulls that read both speeds
 *
 * Source: kinematics; the median, since a pull with a spinning wheel strays far.
 */
export function lagOfLog(powers: readonly PullPower[]): KnownLag | null {
  const lags = Float64Array.from(powers.flatMap(lagOf));
  if (lags.length < leastPulls) return null;
  const lag = median(lags);
  const stray = perMedian * median(lags.map((x) => Math.abs(x - lag)));
  return { lag, error: Math.hypot(common_s, stray / Math.sqrt(lags.length)) };
}

/** Nothing is said of a lag too short to matter. */
function lagOf({ notes }: PullPower): number[] {
  if (!notes.some((n) => n.code === 'power/slip-from-speed')) return [];
  const late = notes.find((n) => n.code === 'power/speed-late');
  return [late?.code === 'power/speed-late' ? late.facts.lag : 0];
}
