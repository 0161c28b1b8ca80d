import { tCdf } from '../statistics/index.ts';
import { crossing } from '../statistics/root.ts';

/**
 * How many standard errors a band must reach to either side so that the whole true curve lies inside with the
 * given confidence.
 *
 *   alpha = 2 (1 - F_t(c)) + (L / pi) (1 + c^2 / nu)^(-nu / 2)
 *
 * The first term is a single point's, the second counts how often a curve of path length L crosses c.
 *
 * @param pathLength  of the standardised curve [rad], see ScatterAlong
 * @param degrees     of the deviation
 *
 * Valid:  an upper bound that is close from 90 % confidence up.
 * Source: Hotelling's tube in Sun and Loader, Annals of Statistics 22 (1994) 1328, equation 3.2, with the
 *         deviation estimated; Worsley's Gaussian kinematic formula has the same shape.
 * Check:  path length 0 gives the quantile of t.
 */
export function simultaneousFactor(pathLength: number, degrees: number, confidence = 0.95): number {
  const beyond = (c: number) =>
    2 * (1 - tCdf(c, degrees)) + (pathLength / Math.PI) * (1 + (c * c) / degrees) ** (-degrees / 2);
  return crossing((c) => -beyond(c), confidence - 1, { low: 0, high: 10 });
}
