import { lambdaCost } from '../mixture/index.ts';
import { fromSi } from '../units/index.ts';
import type { Range } from './headroom.ts';

/**
 * Power after a step over power before it: low and high. Pressure absolute and rise in Pa, spark in rad.
 *
 *   spray    0.98 to 1.01                            alone it brings nothing, or costs some
 *   boost    1 + (0.6 to 1.1) db / (p_a + b)         air goes with pressure; heat and back pressure take of it
 *   spark    1 + (0.5 to 1.5 %) per degree, less by 0.2 % with each degree already taken, never below 0
 *   mixture  1 + what the richer mixture cost        see lambdaCost
 *
 * Source: common practice; for mixture core/mixture/best-power.ts.
 */
export const powerAfter = {
  spray: (): Range => [0.98, 1.01],
  boost: (pressure: number, rise: number): Range => {
    const share = rise / pressure;
    return rise >= 0 ? [1 + 0.6 * share, 1 + 1.1 * share] : [1 + 1.1 * share, 1 + 0.6 * share];
  },
  spark: (taken_rad: number, more_rad: number): Range => {
    const taken = fromSi(taken_rad, 'deg');
    const more = fromSi(more_rad, 'deg');
    const low = Math.max(0, 0.005 - 0.002 * taken);
    const high = Math.max(0, 0.015 - 0.002 * taken);
    return [1 + low * more, 1 + high * more];
  },
  mixture: (from: number, to: number, best: number): Range => {
    const [before, after] = [lambdaCost(from, best), lambdaCost(to, best)];
    const ends = [before.low - after.low, before.high - after.high];
    return [1 + Math.min(...ends), 1 + Math.max(...ends)];
  },
  nothing: (): Range => [1, 1],
} as const;

/** The product of two ranges of positive numbers, end by end. */
export function times(a: Range, b: Range): Range {
  return [a[0] * b[0], a[1] * b[1]];
}
