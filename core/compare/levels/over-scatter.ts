/** One value that the variance of a pull may have, and how likely it is among all. */
export type ScatterPoint = { readonly variance: number; readonly weight: number };

export type OverScatter = {
  readonly points: readonly ScatterPoint[];
  /** Natural logarithm of the likelihood with the variance integrated out, for weighing one story against another. */
  readonly evidence: number;
};

/** A step of this share of the posterior's own deviation; the trapezoidal rule on a bell then errs under 1e-6. */
const stepShare = 0.7;
const longestStep = 0.6;
/** Values less likely than this against the best are no longer counted. */
const least = 1e-5;

/**
 * The variance of a pull as far as its likelihood leaves it open, on an even grid of ln s^2, prior flat on it.
 *
 *   p(s^2) ~ exp(-deviance(s^2) / 2) d ln s^2
 *
 * Leaning a prior or a story on one best s^2 takes it for known; few pulls know it to a factor of two.
 *
 * @param deviance  -2 ln of the restricted likelihood, of one valley over ln s^2
 * @param near      its least value's place
 * @param degrees   about what s^2 is known with, for the step
 * @param floor     s^2 can't be below
 *
 * Source: Box and Tiao, Bayesian Inference in Statistical Analysis (1973), section 2.4: without nuisances a
 *         difference then has Student's t.
 */
export function overScatter(
  deviance: (variance: number) => number,
  near: number,
  degrees: number,
  floor: number,
): OverScatter {
  const step = Math.min(longestStep, stepShare * Math.sqrt(2 / Math.max(degrees, 0.1)));
  const start = Math.max(near, floor);
  const best = deviance(start);
  const found: { variance: number; height: number }[] = [{ variance: start, height: 1 }];
  const walk = (direction: 1 | -1) => {
    for (let k = 1; k < 400; k++) {
      const variance = start * Math.exp(direction * k * step);
      if (variance < floor) break;
      const height = Math.exp((best - deviance(variance)) / 2);
      if (!(height > least)) break;
      found.push({ variance, height });
    }
  };
  walk(1);
  walk(-1);
  const total = found.reduce((sum, f) => sum + f.height, 0);
  return {
    points: found.map(({ variance, height }) => ({ variance, weight: height / total })),
    evidence: Math.log(total * step) - best / 2,
  };
}
