import type { Effect } from '../decide.ts';
import { pooledVariance, satterthwaite } from '../statistics/index.ts';
import { type Contrast, fitLevels, type LevelData, type LevelFit, type Nuisance } from './level-fit.ts';
import { driftChance } from './nuisances.ts';
import { above } from './pool.ts';

export type EffectInput = Omit<LevelData, 'nuisances'> & {
  readonly judged: readonly [number, number];
  readonly intake: Nuisance | null;
  readonly direction: Nuisance | null;
  readonly drift: Nuisance;
  /** Doubt that no pull can shrink: the weather between the sides. */
  readonly lastingVariance: number;
};

export type EffectFound = {
  readonly effect: Effect;
  readonly repeatability: { readonly variance: number; readonly degrees: number };
  /** Shares of power that were taken off or added, after minus before, with their deviation. */
  readonly intake: { readonly correction: number; readonly deviation: number } | null;
  readonly drift: { readonly correction: number; readonly perPull: number; readonly chance: number };
  /** Deviations of the two sides where they differ beyond chance. */
  readonly ownScatter: readonly [number, number] | null;
};

/**
 * Effect between two setups with nuisances held equal; null where no repeatability is known.
 *
 * Whether the day drifted is itself in doubt: the answer with drift and the answer without are weighed by how
 * well each explains all pulls, and their disagreement widens the interval.
 *
 * Source: model averaging: Hoeting et al., Statistical Science 14 (1999) 382, equations 1 to 3.
 */
export function effectBetween(input: EffectInput): EffectFound | null {
  const steady = [input.intake, input.direction].flatMap((n) => n ?? []);
  const without = fitLevels({ ...input, nuisances: steady });
  if (!without) return null;
  const [from, to] = input.judged;
  const plain = without.contrast(from, to);
  const moves = input.drift.values.some((v) => v !== input.drift.values[0]);
  const withDrift = moves ? fitLevels({ ...input, nuisances: [...steady, input.drift] }) : null;
  const drifted = withDrift?.contrast(from, to) ?? plain;
  const odds = withDrift
    ? (driftChance / (1 - driftChance)) * Math.exp((without.deviance - withDrift.deviance) / 2)
    : 0;
  const chance = odds / (1 + odds);
  const mix = (d: number, p: number) => chance * d + (1 - chance) * p;
  const between = chance * (1 - chance) * (drifted.difference - plain.difference) ** 2;
  const difference = mix(drifted.difference, plain.difference);
  const own = ownVariances(input);
  const fitted = mix(drifted.variance, plain.variance) + between;
  const pullVariance = mix(withDrift?.variance ?? 0, without.variance);
  const degreesOfPull = mix(withDrift?.degrees ?? 0, without.degrees);
  const counts = input.judged.map((setup) => input.setupOf.filter((s) => s === setup).length);
  const [nb, na] = [counts[0] as number, counts[1] as number];
  const lasting = Math.max(0, fitted - pullVariance * (1 / nb + 1 / na)) + input.lastingVariance;
  const total = own
    ? satterthwaite([
        { variance: own.parts[0].variance / nb, degrees: own.parts[0].degrees },
        { variance: own.parts[1].variance / na, degrees: own.parts[1].degrees },
        { variance: lasting, degrees: Infinity },
      ])
    : {
        variance: fitted + input.lastingVariance,
        degrees: mix(drifted.degrees, plain.degrees) * ((fitted + input.lastingVariance) / fitted) ** 2,
      };
  return {
    effect: { difference, ...total, pullVariance, lasting, pulls: [nb, na] },
    repeatability: { variance: pullVariance, degrees: degreesOfPull },
    intake: input.intake && {
      correction: mix(drifted.corrections[0] ?? 0, plain.corrections[0] ?? 0),
      deviation: intakeDeviation(without, plain, input.intake),
    },
    drift: {
      correction: chance * (drifted.corrections[steady.length] ?? 0),
      perPull: chance * (withDrift?.coefficients[steady.length] ?? 0),
      chance,
    },
    ownScatter: own ? [Math.sqrt(own.parts[0].variance), Math.sqrt(own.parts[1].variance)] : null,
  };
}

/** Deviation of the intake correction: of its coefficient, over the distance that was corrected. */
function intakeDeviation(fit: LevelFit, contrast: Contrast, intake: Nuisance): number {
  const coefficient = fit.coefficients[0] ?? intake.priorMean;
  const distance = coefficient === 0 ? 0 : -(contrast.corrections[0] ?? 0) / coefficient;
  return Math.abs(distance) * Math.sqrt(fit.covariance[0]?.[0] ?? 0);
}

/** Each side's own variance, where they differ so much (1 %, either way) that one for both would mislead. */
function ownVariances(input: EffectInput) {
  const [b, a] = input.judged.map((setup) => {
    const levels = input.levels.filter((_, i) => input.setupOf[i] === setup);
    return levels.length < 3 ? null : pooledVariance([levels]);
  });
  if (!b || !a) return null;
  return above(b, a) < 0.005 || above(a, b) < 0.005 ? { parts: [b, a] as const } : null;
}
