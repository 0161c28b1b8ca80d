import { median } from '../log/index.ts';
import { type Matrix, solveNormal } from './normal-equations.ts';

/**
 * How logged road speed follows from engine speed in one gear, where the driven tyres slip in proportion to their
 * force and the road speed reaches the log late:
 *
 *   v(t) = d w(t + lag) / (1 + s F / Fmax)
 */
export type SlipModel = {
  /** Distance per radian without slip [m]. */
  readonly distance: number;
  /** Slip at the largest force of the pull. */
  readonly slip: number;
  /** Seconds by which road speed comes late. */
  readonly lag: number;
  /** Standard error of the speed scale in the middle of the pull, relative. */
  readonly error: number;
};

/** Both speeds at one instant of the pull. */
export type SpeedPair = {
  /** w / v [rad/m]. */
  readonly ratio: number;
  /** F / Fmax, 0 to 1. */
  readonly force: number;
  /** dv/dt / v [1/s]: what a second of lag is worth. */
  readonly growth: number;
  /** Relative standard deviation of the ratio. */
  readonly noise: number;
};

export type Nominal = { readonly distance: number; readonly uncertainty: number };

/** What is known of slip before a log is seen: 1 to 3 % at full load (common practice). */
const usualSlip = { centre: 0.02, error: 0.01 };

/**
 * Distance, slip and lag from both logged speeds.
 *
 *   w / v = (1 + s f + lag g) / d,  f = F / Fmax, g = (dv/dt) / v
 *
 * A plane in f and g, fitted with what is known beforehand of s and of the lag. A pull whose force hardly changes
 * cannot tell d from s, but then only both together matter; the prior keeps the plane in place there and gives way
 * wherever the data say more.
 *
 * @param usualLag  standard deviation that is believed possible [s]: 0.06 for a wheel sensor, more for satellites
 * @param nominal   distance as gear and tyre of the car have it, with its relative standard uncertainty; left aside
 *                  where the log contradicts it by three of these
 *
 * Source: linear tyre slip at small slip (Pacejka, Tyre and Vehicle Dynamics, chapter 1, from memory); 1 to 3 %
 *         at full load is common practice.
 */
export function fitSlip(
  pairs: readonly SpeedPair[],
  usualLag: number,
  nominal: Nominal | null = null,
): SlipModel {
  const alone = fitPlane(pairs, usualLag, null);
  const isBelieved =
    nominal !== null && Math.abs(alone.distance / nominal.distance - 1) < 3 * nominal.uncertainty;
  const model = isBelieved ? fitPlane(pairs, usualLag, nominal) : alone;
  // Speeds that do not belong together (another gear half way, a spinning wheel) bend the plane beyond sense.
  const isSound = model.distance > 0 && Math.abs(model.slip) < 0.2 && Math.abs(model.lag) < 1;
  if (isSound) return model;
  const distance = 1 / median(Float64Array.from(pairs, (p) => p.ratio));
  return { distance, slip: 0, lag: 0, error: 0.05 };
}

function fitPlane(pairs: readonly SpeedPair[], usualLag: number, nominal: Nominal | null): SlipModel {
  let centre = median(Float64Array.from(pairs, (p) => p.ratio));
  let plane: Float64Array = Float64Array.of(centre, usualSlip.centre * centre, 0);
  let scale = 1;
  let error = 0;
  for (let pass = 0; pass < 4; pass++) {
    let weights = 0;
    let byForce = 0;
    let byGrowth = 0;
    let force2 = 0;
    let cross = 0;
    let growth2 = 0;
    let right0 = 0;
    let right1 = 0;
    let right2 = 0;
    for (const p of pairs) {
      const deviation = scale * centre * p.noise;
      const off = pass === 0 ? 0 : (p.ratio - at(plane, p)) / deviation;
      // Beyond three deviations a sample loses weight (Huber).
      const weight = (Math.abs(off) > 3 ? 3 / Math.abs(off) : 1) / deviation ** 2;
      weights += weight;
      const { force: f, growth: g, ratio } = p;
      byForce += weight * f;
      byGrowth += weight * g;
      force2 += weight * f * f;
      cross += weight * f * g;
      growth2 += weight * g * g;
      right0 += weight * ratio;
      right1 += weight * f * ratio;
      right2 += weight * g * ratio;
    }
    const normal: Matrix = Float64Array.of(
      weights,
      byForce,
      byGrowth,
      byForce,
      force2,
      cross,
      byGrowth,
      cross,
      growth2,
    );
    const right = Float64Array.of(right0, right1, right2);
    if (nominal) {
      const nominalWeight = 1 / (nominal.uncertainty * centre) ** 2;
      normal[0] = (normal[0] as number) + nominalWeight;
      right[0] = (right[0] as number) + nominalWeight / nominal.distance;
    }
    const slipWeight = 1 / (usualSlip.error * centre) ** 2;
    normal[4] = (normal[4] as number) + slipWeight;
    right[1] = (right[1] as number) + slipWeight * usualSlip.centre * centre;
    normal[8] = (normal[8] as number) + 1 / (usualLag * centre) ** 2;
    const solved = solveNormal(normal, right, 3);
    if (!solved) break;
    plane = solved;
    error = 1 / Math.sqrt(weights);
    // Scatter is taken from the residuals of the first pass: sensors are often worse than their steps.
    const squares = pairs.reduce(
      (sum, p) => sum + Math.min(9, ((p.ratio - at(plane, p)) / (centre * p.noise)) ** 2),
      0,
    );
    scale = Math.max(0.5, Math.sqrt(squares / Math.max(1, pairs.length - 2)));
    centre = plane[0] as number;
  }
  const [k, ks, kLag] = plane as unknown as [number, number, number];
  return { distance: 1 / k, slip: ks / k, lag: kLag / k, error: error / k };
}

function at(plane: Float64Array, p: SpeedPair): number {
  return (plane[0] as number) + (plane[1] as number) * p.force + (plane[2] as number) * p.growth;
}
