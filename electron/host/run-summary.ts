import type { RunSummary } from '../../core/contract/index.ts';
import { countedOnAt } from '../../core/log/index.ts';
import type { Result } from '../../core/result/index.ts';
import { powerRemarks, type RunAnalysis, type RunRecord } from '../../core/session/index.ts';

/** What a screen is told of a run; one that could not be read tells why. */
export function summaryOfRun(record: RunRecord, analysis: Result<RunAnalysis> | undefined): RunSummary {
  if (!analysis?.ok) {
    return {
      record,
      duration_s: null,
      columns: [],
      pulls: [],
      powerNotes: [],
      warnings: [],
      problems: analysis ? [...analysis.problems] : [],
    };
  }
  const { log, pulls, warnings, problems } = analysis.value;
  const first = log.time[0] ?? 0;
  const last = log.time[log.time.length - 1] ?? first;
  return {
    record,
    duration_s: last - first,
    columns: log.channels.map(({ column, quantity, unit, confidence, reason }) => ({
      column,
      quantity,
      unit,
      confidence,
      reason,
    })),
    pulls: pulls.map(({ id, runId, pull, counts, droppedBecause, decisions, trimmedBecause }) => ({
      id,
      runId,
      start_s: pull.start_s,
      end_s: pull.end_s,
      countedOn_s: countedOnAt(log, pull.from),
      gear: pull.gear,
      rpmFrom: finite(pull.rpmFrom),
      rpmTo: finite(pull.rpmTo),
      complete: pull.complete,
      counts,
      droppedBecause,
      decisions: [...decisions],
      trimmedBecause,
      flags: [...pull.flags],
    })),
    powerNotes: [...powerRemarks(pulls.flatMap((p) => p.power?.notes ?? []))],
    warnings: [...warnings],
    problems: [...problems, ...pulls.flatMap((p) => [...p.problems])],
  };
}

/** JSON has no NaN; a log without engine speed has no rpm. */
function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
