import type { PullPower } from './pull-power.ts';

/** Two-sided 95 % of the normal distribution. */
const z95 = 1.96;

/** How far off the power of one pull may be, SI; along rising engine speeds. */
export type OnePullBand = {
  readonly engineSpeed_rad_s: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
};

/** Half of the 95 % interval of one pull's wheel power [W], from its noise and smoothing and from the car as entered. */
export function wheelPowerHalf({
  wheelPowerError,
  systematicError,
}: Pick<PullPower, 'wheelPowerError' | 'systematicError'>): Float64Array {
  return wheelPowerError.map((own, i) => z95 * Math.hypot(own, systematicError[i] ?? Number.NaN));
}

/**
 * Where the true wheel power lies in 95 % of cases as one of these pulls tells it, drawn about their mean:
 *
 *   P ± 1.96 sqrt(mean(s²) + u²)
 *
 * with s the standard error from the pull's own noise and smoothing, u the standard uncertainty from mass, load
 * and radius as entered, which all pulls of the car share. It says nothing of how pulls differ from each other:
 * that is the scatter the verdicts count.
 *
 * Source: JCGM 100:2008 (GUM), clauses 5.1.2 and 6.2.
 * Valid:  for pulls whose grids share their step, as all of a gear do.
 *
 * @returns  over the engine speeds where every pull has its power; null where there are fewer than two
 */
export function onePullBand(pulls: readonly PullPower[]): OnePullBand | null {
  const [first] = pulls;
  if (!first) return null;
  const places = pulls.map((p) => new Map([...p.engineSpeed_rad_s].map((speed, i) => [key(speed), i])));
  const speeds: number[] = [];
  const low: number[] = [];
  const high: number[] = [];
  for (const speed of first.engineSpeed_rad_s) {
    let power = 0;
    let variance = 0;
    for (const [n, pull] of pulls.entries()) {
      const at = places[n]?.get(key(speed)) ?? -1;
      power += (pull.wheelPower[at] ?? Number.NaN) / pulls.length;
      variance +=
        ((pull.wheelPowerError[at] ?? Number.NaN) ** 2 + (pull.systematicError[at] ?? Number.NaN) ** 2) /
        pulls.length;
    }
    if (!Number.isFinite(power) || !Number.isFinite(variance)) continue;
    const half = z95 * Math.sqrt(variance);
    speeds.push(speed);
    low.push(power - half);
    high.push(power + half);
  }
  if (speeds.length < 2) return null;
  return {
    engineSpeed_rad_s: Float64Array.from(speeds),
    low: Float64Array.from(low),
    high: Float64Array.from(high),
  };
}

/** Grids stand on whole rpm. */
const key = (speed_rad_s: number): number => Math.round((speed_rad_s * 30) / Math.PI);
