import type { RunSummary } from '../../core/contract/index.ts';
import { countedOnAt } from '../../core/log/index.ts';
import type { Problems, Result } from '../../core/result/index.ts';
import { powerRemarks, type RunAnalysis, type RunRecord } from '../../core/session/index.ts';

/** What a screen is told of a run; one that could not be read tells why. */
export function summaryOfRun(record: RunRecord, analysis: Result<RunAnalysis> | undefined): RunSummary {
  if (!analysis?.ok) {
    return {
      record,
      duration_s: null,
      columns: analysis ? columnsWithoutTime(analysis.problems) : [],
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

/** A log whose time was not found or is none has columns all the same, one of which can be told to be it. */
function columnsWithoutTime(problems: Problems): RunSummary['columns'] {
  return problems.flatMap((p) => {
    const isOfTime =
      p.code === 'log/no-time' || p.code === 'log/time-stands-still' || p.code === 'log/time-no-clock';
    const names = isOfTime ? p.facts.columns : [];
    return names.map((column) => ({ column, quantity: null, unit: '', confidence: 0, reason: null }));
  });
}

/** JSON has no NaN; a log without engine speed has no rpm. */
function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
