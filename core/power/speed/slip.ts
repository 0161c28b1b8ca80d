import { median } from '../../log/index.ts';
import { type Matrix, solveNormal } from '../smoothing/normal-equations.ts';

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

/** Both speeds at instants of the pull; arrays of one length. */
export type SpeedPairs = {
  /** w / v [rad/m]. */
  readonly ratio: Float64Array;
  /** F / Fmax, 0 to 1. */
  readonly force: Float64Array;
  /** dv/dt / v [1/s]: what a second of lag is worth. */
  readonly growth: Float64Array;
  /** Relative standard deviation of the ratio. */
  readonly noise: Float64Array;
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
export function fitSlip(pairs: SpeedPairs, usualLag: number, nominal: Nominal | null = null): SlipModel {
  const alone = fitPlane(pairs, usualLag, null);
  const isBelieved =
    nominal !== null &&
    Math.abs(alone.distance / nominal.distance - 1) < 3 * Math.hypot(nominal.uncertainty, alone.error);
  const model = isBelieved ? fitPlane(pairs, usualLag, nominal) : alone;
  // Speeds that do not belong together (another gear half way, a spinning wheel) bend the plane beyond sense.
  const isSound = model.distance > 0 && Math.abs(model.slip) < 0.2 && Math.abs(model.lag) < 1;
  if (isSound) return model;
  const distance = 1 / median(pairs.ratio);
  return { distance, slip: 0, lag: 0, error: 0.05 };
}

function fitPlane(pairs: SpeedPairs, usualLag: number, nominal: Nominal | null): SlipModel {
  let centre = median(pairs.ratio);
  let plane: Float64Array = Float64Array.of(centre, usualSlip.centre * centre, 0);
  let scale = 1;
  let error = 0;
  const normal: Matrix = new Float64Array(9);
  const right = new Float64Array(3);
  for (let pass = 0; pass < 4; pass++) {
    normal.fill(0);
    right.fill(0);
    addPairs(pairs, plane, scale * centre, pass > 0, normal, right);
    const weights = normal[0] as number;
    if (nominal) {
      const nominalWeight = 1 / (nominal.uncertainty * centre) ** 2;
      normal[0] = weights + nominalWeight;
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
    scale = Math.max(0.5, scatterOf(pairs, plane, centre));
    centre = plane[0] as number;
  }
  const k = plane[0] as number;
  return {
    distance: 1 / k,
    slip: (plane[1] as number) / k,
    lag: (plane[2] as number) / k,
    error: error / k,
  };
}

/** Adds all pairs to the normal equations of the plane; beyond three deviations a pair loses weight (Huber). */
function addPairs(
  { ratio, force, growth, noise }: SpeedPairs,
  plane: Float64Array,
  unit: number,
  isJudged: boolean,
  normal: Matrix,
  right: Float64Array,
): void {
  let weights = 0;
  let byForce = 0;
  let byGrowth = 0;
  let force2 = 0;
  let cross = 0;
  let growth2 = 0;
  let right0 = 0;
  let right1 = 0;
  let right2 = 0;
  for (let i = 0; i < ratio.length; i++) {
    const r = ratio[i] as number;
    const f = force[i] as number;
    const g = growth[i] as number;
    const deviation = unit * (noise[i] as number);
    let weight = 1 / (deviation * deviation);
    const off = Math.abs(r - at(plane, f, g)) / deviation;
    if (isJudged && off > 3) weight *= 3 / off;
    weights += weight;
    byForce += weight * f;
    byGrowth += weight * g;
    force2 += weight * f * f;
    cross += weight * f * g;
    growth2 += weight * g * g;
    right0 += weight * r;
    right1 += weight * f * r;
    right2 += weight * g * r;
  }
  normal[0] = weights;
  normal[1] = normal[3] = byForce;
  normal[2] = normal[6] = byGrowth;
  normal[4] = force2;
  normal[5] = normal[7] = cross;
  normal[8] = growth2;
  right[0] = right0;
  right[1] = right1;
  right[2] = right2;
}

/** Root mean square of what pairs stray from the plane, in deviations of their own, each counted up to three. */
function scatterOf({ ratio, force, growth, noise }: SpeedPairs, plane: Float64Array, centre: number): number {
  let squares = 0;
  for (let i = 0; i < ratio.length; i++) {
    const off = (ratio[i] as number) - at(plane, force[i] as number, growth[i] as number);
    const deviations = off / (centre * (noise[i] as number));
    squares += Math.min(9, deviations * deviations);
  }
  return Math.sqrt(squares / Math.max(1, ratio.length - 2));
}

function at(plane: Float64Array, force: number, growth: number): number {
  return (plane[0] as number) + (plane[1] as number) * force + (plane[2] as number) * growth;
}
