import type { Note } from '../../result/index.ts';
import { finiteMean, type Grid, onGrid } from '../band/grid.ts';
import type { ChangeDeclaration, RepeatabilityPrior } from '../judge-input.ts';
import { afterSetup, beforeSetup, type Row } from '../selection/rows.ts';
import { type Day, fitDay, type Suspect } from './day-fit.ts';
import { earlierDay } from './earlier-day.ts';
import { type EffectFound, effectBetween } from './effect-between.ts';
import {
  directionSuspect,
  driftSuspect,
  intakeBelongsToChange,
  orderOf,
  readingSuspect,
  settlingSuspect,
} from './nuisances.ts';
import { poolOf } from './pool.ts';

export type EffectWithRemarks = {
  readonly found: EffectFound;
  readonly remarks: readonly Note[];
  /** Per group whose scatter was taken together: its pulls' curves, nuisances between them held equal. */
  readonly curves: readonly (readonly Float64Array[])[];
};

/**
 * Effect of after against before from all rows: whose scatter counts, which nuisances are held equal, and what
 * to say of it. Null where no repeatability is known.
 */
export function findEffect(
  rows: readonly Row[],
  grid: Grid,
  known: {
    readonly declared: ChangeDeclaration | null;
    readonly prior: RepeatabilityPrior | null;
    readonly lastingVariance: number;
    /** Boost neither was to change nor moved: then its small wandering can be held equal. */
    readonly isBoostSteady: boolean;
  },
): EffectWithRemarks | null {
  const remarks: Note[] = [];
  const groups = groupsOf(rows);
  const pool = poolOf(
    groups.map((group) => ({
      levels: rows.filter((r) => r.group === group).map((r) => r.level),
      isJudged: group === beforeSetup || group === afterSetup,
    })),
  );
  const isTaken = (r: Row) => pool.taken[groups.indexOf(r.group)] === true;
  const pooled = rows.filter(isTaken);
  const prior = usablePrior(pooled, known.prior, remarks);
  const setups = [...new Set(pooled.map((r) => r.setup))];
  const setupOf = Int32Array.from(pooled, (r) => setups.indexOf(r.setup));
  const judged = [setups.indexOf(beforeSetup), setups.indexOf(afterSetup)] as const;
  const kind = known.declared?.kind ?? null;
  const reading = (name: 'intake' | 'boost', of: (row: Row) => number) =>
    readingSuspect(name, Float64Array.from(pooled, of), setupOf, judged);
  const intake = reading('intake', (row) => intakeReading(row, grid, intakeBelongsToChange(kind)));
  const boost = known.isBoostSteady ? reading('boost', (row) => pressureReading(row, grid)) : null;
  const pulls = pooled.map((r) => r.pull);
  const direction = directionSuspect(pulls, setupOf);
  const drift = driftSuspect(pulls);
  const settling = settlingSuspect(pulls);
  const day: Day = {
    levels: Float64Array.from(pooled, (r) => r.level),
    setupOf,
    setups: setups.length,
    prior,
    varianceFloor: noiseFloor(pooled),
    order: orderOf(pulls),
    suspects: {
      ...(intake && { intake }),
      ...(direction && { direction }),
      ...(drift && { drift }),
      ...(settling && { settling }),
      ...(boost && { boost }),
    },
  };
  const fit = fitDay(day);
  if (!fit) return null;
  const found = effectBetween(day, fit, judged, known.lastingVariance);
  if (pool.standsAlone) {
    const { own, session } = pool.standsAlone;
    remarks.push({ code: 'compare/own-repeatability', facts: { ownShare: own, sessionShare: session } });
  }
  const others = groups.filter((g, i) => pool.taken[i] && g !== beforeSetup && g !== afterSetup).length;
  if (others > 0) {
    const { degrees } = found.repeatability;
    remarks.push({ code: 'compare/pooled', facts: { entries: others + 2, degrees } });
  }
  if (direction) remarks.push({ code: 'compare/directions-averaged', facts: {} });
  if (found.ownScatter) {
    const [beforeShare, afterShare] = found.ownScatter;
    remarks.push({ code: 'compare/own-scatter', facts: { beforeShare, afterShare } });
  }
  const { intake: byIntake, drift: byDrift, boost: byBoost } = found.corrections;
  const distance = (suspect: Suspect) => {
    const mean = (setup: number) => {
      const values = suspect.values.filter((_, i) => setupOf[i] === setup);
      return values.reduce((a, b) => a + b, 0) / values.length;
    };
    return mean(judged[1]) - mean(judged[0]);
  };
  if (intake && byIntake && Math.abs(byIntake.share) > worthSaying) {
    const facts = { delta: distance(intake), correction: byIntake.share, half: 1.96 * byIntake.deviation };
    remarks.push({ code: 'compare/intake-corrected', facts });
  }
  if (boost && byBoost && Math.abs(byBoost.share) > worthSaying) {
    const facts = { share: distance(boost), correction: byBoost.share, half: 1.96 * byBoost.deviation };
    remarks.push({ code: 'compare/boost-corrected', facts });
  }
  if (byDrift && Math.abs(byDrift.share) > worthSaying) {
    const facts = { perPull: byDrift.coefficient, correction: byDrift.share };
    remarks.push({ code: 'compare/drift-corrected', facts });
  }
  const curves = groups.map((group) =>
    pooled.flatMap((row, i) => {
      if (row.group !== group) return [];
      const factor = Math.exp(-(fit.within[i] as number));
      return [row.power.map((p) => p * factor)];
    }),
  );
  return { found, remarks, curves };
}

function groupsOf(rows: readonly Row[]): string[] {
  return [...new Set(rows.map((r) => r.group))];
}

export function intakeReading({ pull }: Row, grid: Grid, atStart: boolean): number {
  if (atStart) return pull.start.intakeTemperature ?? Number.NaN;
  const curve = pull.curves.intakeTemperature;
  return curve ? finiteMean(onGrid(pull.power.engineSpeed_rad_s, curve, grid)) : Number.NaN;
}

/** Logarithm of the mean absolute manifold pressure over the band, from a gauge where that is all there is. */
function pressureReading({ pull }: Row, grid: Grid): number {
  const { manifoldPressure, boost } = pull.curves;
  const curve = manifoldPressure ?? boost;
  if (!curve) return Number.NaN;
  const mean = finiteMean(onGrid(pull.power.engineSpeed_rad_s, curve, grid));
  const barometer = pull.conditions?.barometer_kPa;
  return Math.log(manifoldPressure ? mean : mean + (barometer == null ? 101_325 : barometer * 1000));
}

/** A correction under a thousandth of power is not worth a line. */
const worthSaying = 0.001;

/** What an earlier day tells of today's scatter, with the remark that it was used or why not. */
function usablePrior(rows: readonly Row[], prior: RepeatabilityPrior | null, remarks: Note[]) {
  const groups = groupsOf(rows).map((g) => rows.filter((r) => r.group === g).map((r) => r.level));
  const { known, refusedBy } = earlierDay(groups, prior);
  if (prior && refusedBy !== null) {
    const facts = { deviationShare: prior.deviationShare, foundShare: refusedBy };
    remarks.push({ code: 'compare/prior-refused', facts });
  }
  if (prior && known) {
    const facts = { deviationShare: prior.deviationShare, degrees: known.degrees };
    remarks.push({ code: 'compare/prior-used', facts });
  }
  return known;
}

/**
 * Variance of a band mean from sensor noise alone: errors of neighbours within one smoothing width go together,
 * so a pull holds as many independent ones as it lasts smoothing widths.
 */
export function noiseFloor(rows: readonly Row[]): number {
  const variances = rows.map(({ pull, level }) => {
    const { wheelPowerError, time, bandwidth } = pull.power;
    const errors = wheelPowerError.filter(Number.isFinite);
    const duration = (time[time.length - 1] as number) - (time[0] as number);
    const pieces = Math.max(1, duration / Math.max(bandwidth, 1e-3));
    const square = errors.reduce((sum, e) => sum + e * e, 0) / Math.max(1, errors.length);
    const variance = square / pieces / Math.exp(2 * level);
    return Number.isFinite(variance) ? variance : 0;
  });
  return Math.max(1e-12, variances.reduce((a, b) => a + b, 0) / Math.max(1, variances.length));
}
