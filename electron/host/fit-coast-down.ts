import type { CoastDown, RollWay } from '../../core/contract/index.ts';
import type { Log } from '../../core/log/index.ts';
import {
  type Car,
  type CoastDownWindow,
  coastDownReport,
  findRolls,
  mostRolls,
  rollsTold,
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

/** The rolls of a run with the road load of those that count; why there is none stands beside them, to be mended. */
export function coastDownOfRun(
  { log }: RunAnalysis,
  { direction }: Pick<RunRecord, 'direction'>,
  car: Car,
  ways: readonly (RollWay | null)[],
): CoastDown {
  const windows = rollsOf(log);
  // A log with more rolls than a fit takes is a drive through town: a person names those that were meant.
  const isDrive = windows.length > mostRolls;
  const usual = (n: number): RollWay =>
    isDrive ? 'left-out' : wayOfPull(direction, n) === -1 ? 'back' : 'out';
  const told = rollsTold(log, windows).map((roll, n) => ({ ...roll, way: ways[n] ?? usual(n) }));
  const counted = windows.flatMap((window, n): CoastDownWindow[] => {
    const way = told[n]?.way;
    return way === 'left-out' ? [] : [{ ...window, way: way === 'back' ? -1 : 1 }];
  });
  if (counted.length === 0) return { rolls: told, fit: null, problems: [] };
  const report = coastDownReport(log, counted, car);
  if (!report.ok) return { rolls: told, fit: null, problems: [...report.problems] };
  const { force, notes, ...fit } = report.value;
  return { rolls: told, fit: { ...fit, force: [...force], notes: [...notes] }, problems: [] };
}
