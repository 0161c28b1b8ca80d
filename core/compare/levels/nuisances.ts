import type { PullEvidence } from '../evidence/pull-evidence.ts';
import type { ChangeKind } from '../verdict.ts';
import type { Nuisance } from './level-fit.ts';

/**
 * What may move power between pulls of one setup. Priors are common practice, shares of power:
 * a warmer charge at the same manifold pressure is thinner by its temperature ratio (0.3 % per K near 320 K),
 * of which an engine shows from none to all; a day drifts by up to some tenths of a percent a pull.
 */
export const nuisancePriors = {
  /** Per K of intake temperature. */
  intake: { mean: -0.0015, deviation: 0.001 },
  /** Per pull. */
  drift: { mean: 0, deviation: 0.001 },
} as const;

/** Chance, before looking, that a day drifts at all (common practice). */
export const driftChance = 0.5;

/**
 * Whether intake temperature may be held equal over the band. Where the change itself warms or cools the charge
 * the temperature is part of its effect; then only the reading at the start of the pull, before boost and spray
 * have their say, tells how the day stood.
 */
export function intakeBelongsToChange(kind: ChangeKind | null): boolean {
  return kind === 'boost' || kind === 'spray' || kind === 'fluid' || kind === null || kind === 'other';
}

/** Driving direction on a road: slope and wind, of which nothing is known before. Null where it never varies. */
export function directionNuisance(pulls: readonly PullEvidence[], setupOf: Int32Array): Nuisance | null {
  const values = Float64Array.from(pulls, (p) => p.direction ?? 0);
  return variesInside(values, setupOf) ? { values, priorMean: 0, priorDeviation: Infinity } : null;
}

/** Place in the order of driving. */
export function driftNuisance(pulls: readonly PullEvidence[]): Nuisance {
  const values = Float64Array.from(pulls, (p) => p.order);
  const { mean, deviation } = nuisancePriors.drift;
  return { values, priorMean: mean, priorDeviation: deviation };
}

/**
 * Intake temperature, as read by `reading`. Pulls without one take the mean of their setup's and say nothing;
 * null where a judged setup has none at all.
 */
export function intakeNuisance(
  readings: Float64Array,
  setupOf: Int32Array,
  judged: readonly [number, number],
): Nuisance | null {
  const sums = new Map<number, { sum: number; count: number }>();
  readings.forEach((value, i) => {
    if (!Number.isFinite(value)) return;
    const setup = setupOf[i] as number;
    const old = sums.get(setup) ?? { sum: 0, count: 0 };
    sums.set(setup, { sum: old.sum + value, count: old.count + 1 });
  });
  if (judged.some((setup) => !sums.has(setup))) return null;
  const values = readings.map((value, i) => {
    if (Number.isFinite(value)) return value;
    const known = sums.get(setupOf[i] as number);
    return known ? known.sum / known.count : 0;
  });
  const { mean, deviation } = nuisancePriors.intake;
  return { values, priorMean: mean, priorDeviation: deviation };
}

function variesInside(values: Float64Array, setupOf: Int32Array): boolean {
  const first = new Map<number, number>();
  return values.some((value, i) => {
    const setup = setupOf[i] as number;
    const seen = first.get(setup);
    if (seen === undefined) first.set(setup, value);
    return seen !== undefined && seen !== value;
  });
}
