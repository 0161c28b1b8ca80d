import { evidenceOfPull, type PullEvidence } from '../compare/index.ts';
import {
  channelOf,
  type DerivedChannel,
  type FormulaParser,
  findPulls,
  type Log,
  type PullOptions,
  readLog,
  settleSpeedUnit,
  withDerivedChannels,
} from '../log/index.ts';
import {
  airflowPowerEstimate,
  type Car,
  type Conditions,
  type KnownLag,
  lagOfLog,
  type PullPower,
  powerOfPull,
  rollingRadius,
} from '../power/index.ts';
import type { Note, Problem, Result } from '../result/index.ts';
import { ok } from '../result/index.ts';
import { type EditedPull, editPulls } from './edited-pulls.ts';
import { type RunDirection, type RunRecord, wayOfPull } from './run-record.ts';

/** One pull with its power; null where power could not be had, for the reason in `problems`. */
export type AnalysedPull = EditedPull & {
  readonly power: PullPower | null;
  readonly problems: readonly Problem[];
};

/** Everything that the program knows of one log. */
export type RunAnalysis = {
  readonly log: Log;
  readonly pulls: readonly AnalysedPull[];
  readonly warnings: readonly Note[];
  /** Derived channels that this log can't give. */
  readonly problems: readonly Problem[];
};

/** What is asked of a log: how to read it and what drove it. */
export type AnalysisInput = {
  readonly file: string;
  readonly runId: string;
  readonly record: Pick<RunRecord, 'columns' | 'pullEdits'>;
  readonly car: Car;
  readonly conditions: Conditions;
  /** Channels by formula, with the parser that reads them; null where the session has none. */
  readonly derived?: { readonly channels: readonly DerivedChannel[]; readonly parser: FormulaParser } | null;
};

/** Hooks of long work; both may be left out. */
export type AnalysisHooks = {
  readonly onProgress?: (share: number) => void;
  readonly isCancelled?: () => boolean;
};

/**
 * A log's bytes to pulls with power.
 *
 * Errors: those of readLog. A pull without power is no failure of the run; it carries its own problems.
 */
export function analyseRun(
  bytes: Uint8Array,
  input: AnalysisInput,
  hooks: AnalysisHooks = {},
): Result<RunAnalysis> {
  const read = readLog(bytes, { file: input.file, mapping: input.record.columns, ...hooks });
  if (!read.ok) return read;
  return ok(analyseLog(read.value, input));
}

/** The same from a log that was read before. */
export function analyseLog(read: Log, input: Omit<AnalysisInput, 'file'>): RunAnalysis {
  const found = pullsOfLog(read, input);
  const speedLag = speedLagOf(found, input);
  return { ...found, pulls: found.pulls.map((edited) => withPower(found.log, edited, input, speedLag)) };
}

/** What is known of a log before the power of its pulls is. */
export type PullsOfLog = Omit<RunAnalysis, 'pulls'> & { readonly pulls: readonly EditedPull[] };

/** What pulls need to know of a car. */
function gearsOf(car: Car): PullOptions {
  const { gearRatios, finalDrive, pullGear } = car;
  return { gearRatios, finalDrive, rollingRadius_m: rollingRadius(car).radius, pullGear };
}

/** A log as the car makes it clear: the unit of a speed that nothing in the file tells. */
export function logOfCar(log: Log, car: Car): Log {
  return settleSpeedUnit(log, gearsOf(car));
}

/** The first half of the analysis: channels by formula, pulls, and what a person did to them. */
export function pullsOfLog(read: Log, input: Omit<AnalysisInput, 'file'>): PullsOfLog {
  const { car, record, runId } = input;
  const clear = logOfCar(read, car);
  const { log, problems } = input.derived
    ? withDerivedChannels(clear, input.derived.channels, input.derived.parser)
    : { log: clear, problems: [] };
  const found = findPulls(log, gearsOf(car));
  const pulls = editPulls(log, runId, found.pulls, record.pullEdits);
  return { log, pulls, warnings: [...log.warnings, ...found.warnings], problems };
}

/** So many pulls tell how late the road speed of a log is; more would cost time and say little more. */
const mostForLag = 7;

/** How late the road speed of a log is, from some of its whole pulls; null where too few tell. */
export function speedLagOf(
  { log, pulls }: Pick<PullsOfLog, 'log' | 'pulls'>,
  { car, conditions }: Pick<AnalysisInput, 'car' | 'conditions'>,
): KnownLag | null {
  // Two road speeds are late by unlike amounts, and each pull takes the better one.
  if (channelOf(log, 'vehicleSpeed') && channelOf(log, 'gpsSpeed')) return null;
  const whole = pulls.filter((p) => p.pull.complete);
  const every = Math.max(1, whole.length / mostForLag);
  const powers = Array.from({ length: Math.min(whole.length, mostForLag) }, (_, k) => {
    const { pull } = whole[Math.floor(k * every)] as EditedPull;
    return powerOfPull(log, pull, car, conditions);
  });
  return lagOfLog(powers.flatMap((p) => (p.ok ? [p.value] : [])));
}

/** The second half, pull by pull, held against the air that was breathed where the log has it. */
export function withPower(
  log: Log,
  edited: EditedPull,
  { car, conditions }: Pick<AnalysisInput, 'car' | 'conditions'>,
  speedLag: KnownLag | null,
): AnalysedPull {
  const power = powerOfPull(log, edited.pull, car, conditions, { speedLag });
  if (!power.ok) return { ...edited, counts: false, power: null, problems: power.problems };
  // A log without air mass flow has no such check, which is no fault of it.
  const air = airflowPowerEstimate(log, edited.pull, power.value);
  const notes = air.ok ? [...power.value.notes, ...air.value.notes] : power.value.notes;
  return { ...edited, power: { ...power.value, notes }, problems: [] };
}

/** The pulls of a run that count, as the judge takes them; `firstOrder` is the place of the first in the session. */
export function evidenceOfRun(
  analysis: RunAnalysis,
  context: {
    entryId: string | null;
    firstOrder: number;
    car: Car;
    conditions: Conditions;
    direction: RunDirection | null;
    from_s?: number | null;
    to_s?: number | null;
  },
): PullEvidence[] {
  const from = context.from_s ?? Number.NEGATIVE_INFINITY;
  const to = context.to_s ?? Number.POSITIVE_INFINITY;
  const evidence: PullEvidence[] = [];
  for (const [n, pull] of analysis.pulls.entries()) {
    if (!pull.counts || !pull.power || pull.pull.start_s < from || pull.pull.start_s > to) continue;
    evidence.push(
      evidenceOfPull(analysis.log, pull.pull, pull.power, {
        id: pull.id,
        entryId: context.entryId,
        order: context.firstOrder + evidence.length,
        direction: wayOfPull(context.direction, n),
        conditions: context.conditions,
        mass_kg: context.car.mass_kg,
      }),
    );
  }
  return evidence;
}
