import { waysByHeading } from '../../log/index.ts';
import type { PullEvidence } from '../evidence/pull-evidence.ts';
import type { ChangeKind } from '../verdict.ts';
import type { Suspect } from './day-fit.ts';

/**
 * What may move power between pulls of one setup. Priors are common practice, as shares of power:
 * a warmer charge at the same manifold pressure is thinner by its temperature ratio (0.3 % per K near 320 K),
 * of which an engine shows from none to all; a day drifts by up to some tenths of a percent a pull; power
 * follows absolute manifold pressure in proportion, where the sensor tells it truly.
 */
export const nuisancePriors = {
  /** Per K of intake temperature. */
  intake: { mean: -0.0015, deviation: 0.0008, chance: 1 },
  /**
   * Per pull. Most days drift by a tenth of a percent or a few, some hardly; two adjacent entries of one day can't
   * tell a drift from a change: only the order of pulls inside entries, and an entry driven again, can.
   */
  drift: { mean: 0, deviation: 0.0045, chance: 0.75, calm: 0.001 },
  /** What the first pull has less or more while the car settles; a third of the rest goes with every pull. */
  settling: { mean: 0, deviation: 0.003, chance: 1 },
  /** Per relative change of absolute manifold pressure. */
  boost: { mean: 1, deviation: 0.3, chance: 0.5 },
} as const;

/**
 * Whether intake temperature may be held equal over the band. Where the change itself warms or cools the charge
 * the temperature is part of its effect; then only the reading at the start of the pull, before boost and spray
 * have their say, tells how the day stood.
 */
export function intakeBelongsToChange(kind: ChangeKind | null): boolean {
  return kind === 'boost' || kind === 'spray' || kind === 'fluid' || kind === null || kind === 'other';
}

/** Driving direction on a road: slope and wind, of which nothing is known before. Null where it never varies. */
export function directionSuspect(pulls: readonly PullEvidence[], setupOf: Int32Array): Suspect | null {
  const values = waysOf(pulls);
  return variesInside(values, setupOf)
    ? { values, priorMean: 0, strengths: [{ deviation: Infinity, chance: 1 }] }
    : null;
}

/** Out 1, back -1, not known 0: as said, else from where each pull went against the first. */
export function waysOf(pulls: readonly PullEvidence[]): Float64Array {
  const ways = waysByHeading(pulls.map((p) => p.heading_rad ?? null));
  return Float64Array.from(pulls, (p, i) => p.direction ?? ways[i] ?? 0);
}

/** Place in the order of driving. Null where no order is known. */
export function driftSuspect(pulls: readonly PullEvidence[]): Suspect | null {
  const values = orderOf(pulls);
  if (!values) return null;
  const { mean, deviation, chance, calm } = nuisancePriors.drift;
  return {
    values,
    priorMean: mean,
    strengths: [
      { deviation, chance },
      { deviation: calm, chance: 1 - chance },
    ],
  };
}

/** What is left of the car's settling. Null where no order is known, or every pull came long after the first. */
export function settlingSuspect(pulls: readonly PullEvidence[]): Suspect | null {
  const values = orderOf(pulls)?.map((place) => (2 / 3) ** Math.max(0, place));
  if (!values?.some((left) => left > 0.02)) return null;
  const { mean, deviation, chance } = nuisancePriors.settling;
  return { values, priorMean: mean, strengths: [{ deviation, chance }] };
}

/** Place of each pull in the order of driving; null where none is known. */
export function orderOf(pulls: readonly PullEvidence[]): Float64Array | null {
  const values = Float64Array.from(pulls, (p) => p.order);
  return values.every((v) => v === values[0]) ? null : values;
}

/**
 * A reading that may have moved power. Pulls without one take the mean of their setup's and say nothing; null
 * where a setup that matters has none at all.
 *
 * @param needed  setups that must have a reading
 */
export function readingSuspect(
  name: 'intake' | 'boost',
  readings: Float64Array,
  setupOf: Int32Array,
  needed: readonly number[],
): Suspect | null {
  const sums = new Map<number, { sum: number; count: number }>();
  readings.forEach((value, i) => {
    if (!Number.isFinite(value)) return;
    const setup = setupOf[i] as number;
    const old = sums.get(setup) ?? { sum: 0, count: 0 };
    sums.set(setup, { sum: old.sum + value, count: old.count + 1 });
  });
  if (needed.some((setup) => !sums.has(setup))) return null;
  const values = readings.map((value, i) => {
    if (Number.isFinite(value)) return value;
    const known = sums.get(setupOf[i] as number);
    return known ? known.sum / known.count : 0;
  });
  const { mean, deviation, chance } = nuisancePriors[name];
  return { values, priorMean: mean, strengths: [{ deviation, chance }] };
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
