import type { CoastDown, RollWay } from '../../core/contract/index.ts';
import type { Log } from '../../core/log/index.ts';
import {
  type Car,
  type CoastDownWindow,
  coastDownReport,
  findRolls,
  type LoggedRoll,
  mostRolls,
  rollsIn,
  rollsTold,
  waysOfRolls,
} from '../../core/power/index.ts';
import { type RunAnalysis, type RunRecord, wayOfPull } from '../../core/session/index.ts';

/** Rolls of the logs that were looked through; asked again with every edit. */
const known = new WeakMap<Log, readonly CoastDownWindow[]>();

function rollsOf(log: Log): readonly CoastDownWindow[] {
  const rolls = known.get(log) ?? findRolls(log);
  known.set(log, rolls);
  return rolls;
}

/** Runs in which the car rolls in neutral, and how often. */
export function runsWithRolls(
  analyses: ReadonlyMap<string, RunAnalysis>,
): { runId: string; rolls: number }[] {
  return [...analyses]
    .map(([runId, { log }]) => ({ runId, rolls: rollsOf(log).length }))
    .filter(({ rolls }) => rolls > 0);
}

/** A run whose rolls are to be fitted, with what was said of them. */
export type RolledRun = {
  readonly record: Pick<RunRecord, 'id' | 'direction'>;
  readonly analysis: Pick<RunAnalysis, 'log'>;
  readonly ways: readonly (RollWay | null)[];
};

/**
 * The rolls of some runs with the road load of those that count; why there is none stands beside them, to be mended.
 * The way of a roll is the one said of it, else what the run says of its pulls, else what its positions tell, else out.
 */
export function coastDownOfRuns(runs: readonly RolledRun[], car: Car): CoastDown {
  const found = runs.flatMap(({ record, analysis, ways }) => {
    const windows = rollsOf(analysis.log);
    // A log with more rolls than a fit takes is a drive through town: a person names those that were meant.
    const isDrive = windows.length > mostRolls;
    return rollsIn(analysis.log, windows).map((roll, n) => {
      const told = wayOfPull(record.direction, n);
      const said = ways[n] ?? (isDrive ? 'left-out' : told && nameOf(told));
      return { roll, runId: record.id, said };
    });
  });
  const rolled = found.map((f) => f.roll);
  const byPosition = waysOfRolls(rolled);
  const ways = found.map(({ said }, i): RollWay => said ?? nameOf(byPosition[i] ?? 1));
  const rolls = rollsTold(rolled).map((roll, i) => ({
    ...roll,
    runId: found[i]?.runId ?? '',
    way: ways[i] ?? 'out',
  }));
  const counted = rolled.flatMap((roll, i): LoggedRoll[] =>
    ways[i] === 'left-out' ? [] : [{ ...roll, way: ways[i] === 'back' ? -1 : 1 }],
  );
  if (counted.length === 0) return { rolls, fit: null, problems: [] };
  const report = coastDownReport(counted, car);
  if (!report.ok) return { rolls, fit: null, problems: [...report.problems] };
  const { force, notes, ...fit } = report.value;
  return { rolls, fit: { ...fit, force: [...force], notes: [...notes] }, problems: [] };
}

function nameOf(way: 1 | -1): RollWay {
  return way === -1 ? 'back' : 'out';
}
