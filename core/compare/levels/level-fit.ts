import { crossing } from '../statistics/root.ts';
import { overScatter } from './over-scatter.ts';
import { inverseAndDeterminant, quadraticForm, type SquareMatrix } from './small-matrix.ts';
import { wanderOf, wanderShare } from './wandering.ts';

/**
 * Something other than the setup that may move power from pull to pull: one value per pull, and what is known
 * of its effect before looking. A deviation of Infinity says that nothing is known.
 */
export type Nuisance = {
  readonly values: Float64Array;
  readonly priorMean: number;
  readonly priorDeviation: number;
};

export type LevelData = {
  /** One per pull: natural logarithm of the band mean. */
  readonly levels: Float64Array;
  /** Setup of each pull, 0 .. setups - 1. */
  readonly setupOf: Int32Array;
  readonly setups: number;
  readonly nuisances: readonly Nuisance[];
  /** Repeatability known from elsewhere. */
  readonly prior: { readonly variance: number; readonly degrees: number } | null;
  /** Variance of a level from sensor noise alone: repeatability can't be better. */
  readonly varianceFloor: number;
  /** Place of each pull in the order of driving; null where none is known, and then nothing wanders. */
  readonly order: Float64Array | null;
};

export type LevelFit = {
  /** Variance of one pull about its setup, and its degrees of freedom. */
  readonly variance: number;
  readonly degrees: number;
  readonly coefficients: readonly number[];
  /** Covariance of the coefficients at that variance. */
  readonly covariance: SquareMatrix;
  /** Natural logarithm of the likelihood, all unknowns integrated out: weighs one set of nuisances against another. */
  readonly evidence: number;
  /** What the nuisances did to each pull, about the mean of its setup. */
  readonly within: Float64Array;
  /** Sum of setups' levels by weights that add up to zero, nuisances held equal. */
  readonly combine: (weights: readonly number[]) => Combination;
};

export type Combination = {
  readonly difference: number;
  /** The sum for each variance that a pull may have: normal, with its chance. */
  readonly byScatter: readonly {
    readonly weight: number;
    readonly centre: number;
    readonly scale: number;
  }[];
  /** Degrees of freedom of the one t nearest to it, to plan by. */
  readonly degrees: number;
  /** What holding each nuisance equal did to the sum. */
  readonly corrections: readonly number[];
};

/**
 * Levels of setups with nuisances between pulls, by restricted maximum likelihood.
 *
 *   level = setup + sum of coefficient x nuisance + pull,   coefficient ~ N(m, t^2),   pull ~ N(0, s^2)
 *
 * Where the nuisances say nothing this is the analysis of variance: s^2 is pooled inside setups. A coefficient
 * takes what pulls of one setup tell of it and leans on its prior for the rest; what neither knows widens the
 * contrast. How far a prior is leant on depends on s^2, so a contrast is told for each s^2 that the pulls leave open,
 * and a step of the day's level from pull to pull is added (wandering).
 *
 * `variance` is the restricted likelihood's best s^2, its degrees of freedom from the expected information on it,
 * those of a contrast by Satterthwaite: what is said of repeatability, and planned by.
 *
 * Null where no setup has two pulls and no prior helps.
 *
 * Source: Searle, Casella and McCulloch, Variance Components (1992), chapter 6; Giesbrecht and Burns,
 *         Biometrics 41 (1985) 477 for the degrees of freedom; over-scatter for the variance integrated out.
 * Check:  one setup, one nuisance without prior: NIST StRD, Norris. Setups alone: NIST StRD, SiRstv, and a contrast
 *         has the quantiles of Student's t.
 */
export function fitLevels(data: LevelData): LevelFit | null {
  const { nuisances, prior } = data;
  const k = nuisances.length;
  const counts = new Array<number>(data.setups).fill(0);
  for (const setup of data.setupOf) counts[setup] = (counts[setup] as number) + 1;
  const used = counts.filter((n) => n > 0).length;
  const inside = data.levels.length - used;
  const levels = centred(data.levels, data);
  const columns = nuisances.map((nuisance) => centred(nuisance.values, data));
  const rest = levels.values.map((value, i) =>
    nuisances.reduce((v, n, j) => v - n.priorMean * ((columns[j] as Centred).values[i] as number), value),
  );
  const products: SquareMatrix = columns.map((a) => columns.map((b) => dot(a.values, b.values)));
  const against = columns.map((c) => dot(c.values, rest));
  const squares = dot(rest, rest);
  const precision = nuisances.map((n) => 1 / (n.priorDeviation * n.priorDeviation));
  const free = inside - precision.filter((p) => p === 0).length;
  if (free + (prior?.degrees ?? 0) <= 0) return null;

  /** (s T^-1 + Z'Z), its inverse and determinant. */
  const normal = (s: number) =>
    inverseAndDeterminant(
      products.map((row, i) => row.map((v, j) => v + (i === j ? s * (precision[i] as number) : 0))),
    );
  const deviance = (s: number): number => {
    const { inverse, determinant } = normal(s);
    const quadratic = squares - quadraticForm(inverse, against);
    const spread = nuisances.reduce(
      (sum, n) => sum + (Number.isFinite(n.priorDeviation) ? Math.log(n.priorDeviation ** 2) : 0),
      0,
    );
    return (
      (inside - k) * Math.log(s) +
      Math.log(determinant) +
      spread +
      Math.max(0, quadratic) / s +
      (prior ? prior.degrees * (Math.log(s) + prior.variance / s) : 0)
    );
  };
  const top = (squares + (prior ? prior.degrees * prior.variance : 0)) / Math.max(1, free) + 1e-30;
  /** Slope of the deviance over ln s. */
  const score = (s: number): number => {
    const { inverse } = normal(s);
    const v = inverse.map((row) => dot(row, against));
    const trace = inverse.reduce((sum, row, i) => sum + (row[i] as number) * (precision[i] as number), 0);
    const fall = v.reduce((sum, x, i) => sum + x * x * (precision[i] as number), 0);
    const quadratic = squares - quadraticForm(inverse, against);
    const known = prior ? prior.degrees * (1 - prior.variance / s) : 0;
    return inside - k + s * trace - quadratic / s + fall + known;
  };
  const near = leastOf(deviance, top * 1e-9, top * 4);
  // A least value found by values alone is good to half the digits; its slope gives the other half.
  const [low, high] = [near / 1.003, near * 1.003];
  const exact = score(low) >= 0 ? low : score(high) <= 0 ? high : crossing(score, 0, { low, high });
  const variance = Math.max(data.varianceFloor, exact);
  const { inverse } = normal(variance);
  const degrees = inside - k + shrunkDegrees(inverse, precision, variance) + (prior?.degrees ?? 0);
  const { points, evidence } = overScatter(deviance, exact, degrees, data.varianceFloor);
  const open = points.map((point) => {
    const { inverse } = normal(point.variance);
    return { ...point, inverse, step: inverse.map((row) => dot(row, against)) };
  });
  const coefficients = nuisances.map(
    (n, j) => n.priorMean + open.reduce((sum, at) => sum + at.weight * (at.step[j] as number), 0),
  );
  const covariance = inverse.map((row) => row.map((v) => v * variance));

  const combine = (weights: readonly number[]): Combination => {
    const sum = (means: Float64Array) =>
      weights.reduce((x, w, i) => (w === 0 ? x : x + w * (means[i] as number)), 0);
    const distance = columns.map((c) => sum(c.means));
    const corrections = distance.map((d, j) => -d * (coefficients[j] as number));
    const plain = sum(levels.means);
    const share = weights.reduce((x, w, i) => (w === 0 ? x : x + (w * w) / (counts[i] as number)), 0);
    const ofPulls = Float64Array.from(
      data.setupOf,
      (setup) => (weights[setup] as number) / (counts[setup] as number),
    );
    const wandered = data.order ? wanderShare ** 2 * wanderOf(data.order, ofPulls) : 0;
    const varianceOf = (s: number, inverse: SquareMatrix) =>
      s * (share + wandered + quadraticForm(inverse, distance));
    const total = varianceOf(variance, inverse);
    const h = 1e-4;
    const [more, less] = [variance * (1 + h), variance * (1 - h)];
    const slope = (varianceOf(more, normal(more).inverse) - varianceOf(less, normal(less).inverse)) / (2 * h);
    return {
      difference: plain + corrections.reduce((x, y) => x + y, 0),
      byScatter: open.map((at) => ({
        weight: at.weight,
        centre: distance.reduce(
          (x, d, j) => x - d * ((nuisances[j] as Nuisance).priorMean + (at.step[j] as number)),
          plain,
        ),
        scale: Math.sqrt(varianceOf(at.variance, at.inverse)),
      })),
      degrees: degrees * (total / Math.max(slope, 1e-3 * total)) ** 2,
      corrections,
    };
  };
  const within = data.levels.map((_, i) =>
    columns.reduce((sum, c, j) => sum + (coefficients[j] as number) * (c.values[i] as number), 0),
  );
  return { variance, degrees, coefficients, covariance, evidence, within, combine };
}

type Centred = { readonly values: Float64Array; readonly means: Float64Array };

/** Values less their setup's mean. */
function centred(values: Float64Array, data: Pick<LevelData, 'setupOf' | 'setups'>): Centred {
  const sums = new Float64Array(data.setups);
  const counts = new Float64Array(data.setups);
  data.setupOf.forEach((setup, i) => {
    sums[setup] = (sums[setup] as number) + (values[i] as number);
    counts[setup] = (counts[setup] as number) + 1;
  });
  const means = sums.map((sum, setup) => sum / (counts[setup] as number));
  return { values: values.map((v, i) => v - (means[data.setupOf[i] as number] as number)), means };
}

function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}

/** What priors give back of the degrees that coefficients cost: trace of (s T^-1 (s T^-1 + Z'Z)^-1)^2. */
function shrunkDegrees(inverse: SquareMatrix, precision: readonly number[], s: number): number {
  const m = inverse.map((row, i) => row.map((v) => s * (precision[i] as number) * v));
  let trace = 0;
  m.forEach((row, i) => {
    row.forEach((v, j) => {
      trace += v * ((m[j] as readonly number[])[i] as number);
    });
  });
  return trace;
}

/** Where a function of one valley over the logarithm is least, by golden section. */
function leastOf(f: (x: number) => number, low: number, high: number): number {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let a = Math.log(low);
  let b = Math.log(high);
  let c = b - ratio * (b - a);
  let d = a + ratio * (b - a);
  let fc = f(Math.exp(c));
  let fd = f(Math.exp(d));
  for (let i = 0; i < 60 && b - a > 1e-3; i++) {
    if (fc < fd) {
      b = d;
      d = c;
      fd = fc;
      c = b - ratio * (b - a);
      fc = f(Math.exp(c));
    } else {
      a = c;
      c = d;
      fc = fd;
      d = a + ratio * (b - a);
      fd = f(Math.exp(d));
    }
  }
  return Math.exp((a + b) / 2);
}
