import { median } from './speed-signal.ts';

/**
 * How road speed follows from engine speed in one gear when the driven tyres slip in proportion to their force:
 *
 *   v = d w / (1 + s F / Fmax)
 */
export type SlipModel = {
  /** Distance per radian without slip [m]. */
  readonly distance: number;
  /** Slip at the largest force of the pull. */
  readonly slip: number;
  /** Standard error of the speed scale in the middle of the pull, relative. */
  readonly error: number;
};

/**
 * Distance and slip from both logged speeds.
 *
 *   w / v = (1 + s f) / d,  f = F / Fmax: a straight line in f, fitted with what is known beforehand of s
 *
 * A pull whose force hardly changes cannot tell d from s, but then only their product matters; the practice value
 * of s (0.02, standard error 0.01) keeps the line in place there and gives way wherever the data say more.
 *
 * @param ratio   w / v at samples [rad/m]
 * @param share   f at the same samples, 0 to 1
 * @param noise   relative standard deviation of one ratio, 1/v included: one per sample
 *
 * Source: linear tyre slip at small slip (Pacejka, Tyre and Vehicle Dynamics, chapter 1, from memory); 1 to 3 %
 *         at full load is common practice.
 */
export function fitSlip(ratio: Float64Array, share: Float64Array, noise: Float64Array): SlipModel {
  const prior = { slip: 0.02, error: 0.01 };
  let centre = median(ratio);
  let k = centre;
  let ks = prior.slip * centre;
  let errorK = 0;
  // Scatter is taken from the residuals of the first pass: sensors are often worse than their steps.
  let scale = 1;
  for (let pass = 0; pass < 3; pass++) {
    let s00 = 0;
    let s01 = 0;
    let s11 = 0;
    let b0 = 0;
    let b1 = 0;
    for (let i = 0; i < ratio.length; i++) {
      const r = ratio[i] as number;
      const f = share[i] as number;
      const sd = scale * centre * (noise[i] as number);
      const off = pass === 0 ? 0 : (r - k - ks * f) / sd;
      // Beyond three deviations a sample loses weight (Huber).
      const weight = (Math.abs(off) > 3 ? 3 / Math.abs(off) : 1) / (sd * sd);
      s00 += weight;
      s01 += weight * f;
      s11 += weight * f * f;
      b0 += weight * r;
      b1 += weight * r * f;
    }
    const priorWeight = 1 / (prior.error * centre) ** 2;
    s11 += priorWeight;
    b1 += priorWeight * prior.slip * centre;
    const determinant = s00 * s11 - s01 * s01;
    k = (b0 * s11 - b1 * s01) / determinant;
    ks = (s00 * b1 - s01 * b0) / determinant;
    errorK = Math.sqrt(1 / s00);
    let squares = 0;
    for (let i = 0; i < ratio.length; i++) {
      const off = ((ratio[i] as number) - k - ks * (share[i] as number)) / (centre * (noise[i] as number));
      squares += Math.min(off * off, 9);
    }
    scale = Math.max(0.5, Math.sqrt(squares / Math.max(1, ratio.length - 2)));
    centre = k;
  }
  return { distance: 1 / k, slip: ks / k, error: errorK / k };
}
