import { factorBand, inverseBand, rowLength, solveBand } from './band.ts';

/** Rounds with one variance of bends for all places, then with one for each. */
const evenRounds = 5;
const localRounds = 5;
/** Bends within this time tell each other's variance [s], less the further off. */
const reach = 0.7;
/** The usual variance counts as so many bends at each place. */
const usualWorth = 0.5;
/** A variance of bends is looked for down to this share of a coefficient's own: a parabola, as far as digits go. */
const stiffest = 1e-9;
/**
 * Errors are those of a belief so many standard deviations softer than the likeliest: how much a curve bends is
 * itself read from a few bends, and one read too stiff hides a steep onset. So the truth of generated logs at 10 Hz
 * with steep onsets lies inside 95 % intervals at 94 to 95 % of their points in place of 89; on the rest it is 97 to 98.
 */
const softer = 1.2;
/** A tenth of a bend decided is a straight rise: less asks for no more doubt. */
const leastDecided = 0.1;

/** Coefficients of a spline and the factors they were solved with. */
export type SolvedSpline = {
  readonly coefficients: Float64Array;
  readonly factors: Float64Array;
  /** Their variances inside the band, worked out where they are asked for. */
  readonly covariance: () => Float64Array;
};

/**
 * Coefficients of the spline that samples and a belief about its bends make likeliest.
 *
 *   minimise sum w_i (y_i - s(t_i))^2 + sum b_j^2 / q_j + sum c_j^2 / r
 *
 * b_j is the third difference of four coefficients in a row, how much the slope bends there; c_j the second of three,
 * how much it changes.
 * The variances q_j are not given but read from the bends themselves, by MacKay's rule: squares found over the share
 * of each that the samples and not the belief have decided. First one for all; then for each place its neighbours',
 * so that a steep rise of boost may bend while the plateau after it stays straight. The logarithm of such a variance
 * is known to sqrt(2 / g), g the bends that the samples have decided; the errors are worked out with that added.
 *
 * @param information  of the samples, as a band
 * @param right        weights times values
 * @param cellWidth    [s]
 * @param change       r, variance of second differences
 * @param isLocal      false for one variance of bends throughout
 *
 * Source: MacKay, Bayesian interpolation, Neural Computation 4 (1992) 415, equation for alpha and its error bar;
 *         smoothing by penalised differences as in Eilers and Marx, Statistical Science 11 (1996) 89 (both from
 *         memory). Reach and worth were tuned on generated drives.
 */
export function solveBends(
  information: Float64Array,
  right: Float64Array,
  cellWidth: number,
  change: number,
  isLocal: boolean,
): SolvedSpline {
  const size = right.length;
  const bends = size - 3;
  const factors = new Float64Array(information.length);
  const covariance = new Float64Array(information.length);
  const coefficients = new Float64Array(size);
  let mass = 0;
  for (let i = 0; i < size; i++) mass += information[i * rowLength] as number;
  const least = (stiffest * size) / mass;
  const variances = new Float64Array(bends).fill(1e4 * least);
  const squares = new Float64Array(bends);
  const decided = new Float64Array(bends);
  const weights = isLocal ? nearness(Math.max(1, Math.round(reach / cellWidth))) : null;
  const rounds = isLocal ? evenRounds + localRounds : evenRounds;
  for (let round = 0; round <= rounds; round++) {
    factors.set(information);
    addBelief(factors, variances, change);
    factorBand(factors, size);
    coefficients.set(right);
    solveBand(factors, coefficients);
    if (round === rounds) break;
    inverseBand(factors, size, covariance);
    lookAtBends(coefficients, covariance, variances, squares, decided);
    if (round < evenRounds || !weights) variances.fill(Math.max(least, sum(squares) / sum(decided)));
    else spread(variances, squares, decided, weights, least);
  }
  return {
    coefficients,
    factors,
    covariance: () => {
      const doubt = Math.exp(softer * Math.sqrt(2 / Math.max(leastDecided, sum(decided))));
      const soft = information.slice();
      addBelief(
        soft,
        variances.map((q) => doubt * q),
        change,
      );
      factorBand(soft, size);
      inverseBand(soft, size, covariance);
      return covariance;
    },
  };
}

/** Adds the belief's own information to a band; written out, since it is asked for at each place in each round. */
function addBelief(band: Float64Array, variances: Float64Array, change: number): void {
  const c = 1 / change;
  for (let j = 0; j < variances.length; j++) {
    const at = j * rowLength;
    const p = 1 / (variances[j] as number);
    // -1, 3, -3, 1 times itself, and 1, -2, 1.
    band[at] = (band[at] as number) + p + c;
    band[at + 1] = (band[at + 1] as number) - 3 * p - 2 * c;
    band[at + 2] = (band[at + 2] as number) + 3 * p + c;
    band[at + 3] = (band[at + 3] as number) - p;
    band[at + 4] = (band[at + 4] as number) + 9 * p + 4 * c;
    band[at + 5] = (band[at + 5] as number) - 9 * p - 2 * c;
    band[at + 6] = (band[at + 6] as number) + 3 * p;
    band[at + 8] = (band[at + 8] as number) + 9 * p + c;
    band[at + 9] = (band[at + 9] as number) - 3 * p;
    band[at + 12] = (band[at + 12] as number) + p;
  }
  // The last second difference stands beside no third.
  const at = variances.length * rowLength;
  band[at] = (band[at] as number) + c;
  band[at + 1] = (band[at + 1] as number) - 2 * c;
  band[at + 2] = (band[at + 2] as number) + c;
  band[at + 4] = (band[at + 4] as number) + 4 * c;
  band[at + 5] = (band[at + 5] as number) - 2 * c;
  band[at + 8] = (band[at + 8] as number) + c;
}

/** Squares of all bends, and what share of each the samples have decided. */
function lookAtBends(
  x: Float64Array,
  z: Float64Array,
  variances: Float64Array,
  squares: Float64Array,
  decided: Float64Array,
): void {
  for (let j = 0; j < variances.length; j++) {
    const bend = (x[j + 3] as number) - (x[j] as number) + 3 * ((x[j + 1] as number) - (x[j + 2] as number));
    squares[j] = bend * bend;
    const at = j * rowLength;
    const own =
      (z[at] as number) + 9 * ((z[at + 4] as number) + (z[at + 8] as number)) + (z[at + 12] as number);
    const beside = (z[at + 1] as number) + 3 * (z[at + 5] as number) + (z[at + 9] as number);
    const further = 3 * ((z[at + 2] as number) + (z[at + 6] as number)) - (z[at + 3] as number);
    const share = 1 - (own - 6 * beside + 2 * further) / (variances[j] as number);
    decided[j] = Math.max(1e-4, share);
  }
}

/** The variance of each bend from those around it and from the usual one. */
function spread(
  variances: Float64Array,
  squares: Float64Array,
  decided: Float64Array,
  weights: Float64Array,
  least: number,
): void {
  let logs = 0;
  for (let j = 0; j < variances.length; j++) logs += Math.log(variances[j] as number);
  const usual = Math.exp(logs / variances.length);
  const far = (weights.length - 1) / 2;
  for (let j = 0; j < variances.length; j++) {
    let above = usualWorth * usual;
    let below = usualWorth;
    const to = Math.min(variances.length - 1, j + far);
    for (let k = Math.max(0, j - far), i = k - j + far; k <= to; k++, i++) {
      const w = weights[i] as number;
      above += w * (squares[k] as number);
      below += w * (decided[k] as number);
    }
    variances[j] = Math.max(least, above / below);
  }
}

/** (1 - x^2)^2 over so many places to either side. */
function nearness(far: number): Float64Array {
  const weights = new Float64Array(2 * far + 1);
  for (let i = 0; i < weights.length; i++) weights[i] = (1 - ((i - far) / (far + 1)) ** 2) ** 2;
  return weights;
}

function sum(values: Float64Array): number {
  let total = 0;
  for (let i = 0; i < values.length; i++) total += values[i] as number;
  return total;
}
