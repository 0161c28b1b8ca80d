import type { ShownConflict, ShownMerge } from '../../core/contract/index.ts';
import { fail, ok, type Result } from '../../core/result/index.ts';
import {
  type MergeSide,
  problemsOfSchema,
  RunRecordSchema,
  SessionSchema,
  type SessionState,
  sameJson,
  settleConflict,
  valueAt,
} from '../../core/session/index.ts';
import { type FileConflict, type MergeRecord, type MergeReport, mergeRecords } from '../store/index.ts';

const runFile = /^runs\/([a-z0-9-]+)\/run\.json$/;

/** What the merges of a session left to decide, the newest first, each with what stands now. */
export async function shownConflicts(folder: string, state: SessionState): Promise<Result<ShownConflict[]>> {
  const records = await mergeRecords(folder);
  if (!records.ok) return records;
  return ok(records.value.toReversed().flatMap((record) => conflictsOf(record, state)));
}

/** The report of one merge for a screen. */
export async function shownMerge(
  folder: string,
  state: SessionState,
  report: MergeReport,
): Promise<Result<ShownMerge>> {
  const conflicts = await shownConflicts(folder, state);
  if (!conflicts.ok) return conflicts;
  return ok({
    newRuns: report.newRuns.map((id) => ({ id, name: state.runs[id]?.name ?? id })),
    conflicts: conflicts.value.filter(({ record }) => record === report.record),
    notices: [...report.notices],
  });
}

/**
 * The state in which one conflict is settled for one side.
 *
 * Errors: store/no-version where there is no such record; session/conflict-gone where its place is gone;
 * session/field-invalid where the value does not fit, as in a record that was written by hand.
 */
export async function settledState(
  folder: string,
  state: SessionState,
  choice: { readonly record: string; readonly index: number; readonly take: MergeSide },
): Promise<Result<SessionState>> {
  const records = await mergeRecords(folder);
  if (!records.ok) return records;
  const conflict = records.value.find(({ file }) => file === choice.record)?.conflicts[choice.index];
  if (!conflict || conflict.kind === 'order') {
    return fail({ code: 'store/no-version', facts: { file: choice.record } });
  }
  const standing = documentOf(conflict, state);
  const settled = standing && settleConflict(standing, conflict, choice.take);
  if (!settled) return fail({ code: 'session/conflict-gone', facts: { path: conflict.path } });
  const runId = runFile.exec(conflict.file)?.[1];
  if (runId === undefined) {
    const session = SessionSchema.safeParse(settled);
    if (!session.success) return fail(...problemsOfSchema(session.error, conflict.file));
    // Identity is not for deciding: without it the next merge would not know its copy again.
    return ok({ ...state, session: { ...session.data, id: state.session.id } });
  }
  const record = RunRecordSchema.safeParse(settled);
  if (!record.success) return fail(...problemsOfSchema(record.error, conflict.file));
  return ok({ ...state, runs: { ...state.runs, [runId]: { ...record.data, id: runId } } });
}

function documentOf({ file }: FileConflict, state: SessionState): object | null {
  const runId = runFile.exec(file)?.[1];
  if (runId !== undefined) return state.runs[runId] ?? null;
  return file === 'session.json' ? state.session : null;
}

function conflictsOf(record: MergeRecord, state: SessionState): ShownConflict[] {
  return record.conflicts.map((conflict, index) => ({
    record: record.file,
    index,
    mergedAt: record.mergedAt,
    file: conflict.file,
    path: conflict.path,
    kind: conflict.kind,
    mine: textOf(conflict.mine),
    theirs: textOf(conflict.theirs),
    stands: standing(conflict, state),
  }));
}

function standing(conflict: FileConflict, state: SessionState): ShownConflict['stands'] {
  const document = documentOf(conflict, state);
  if (!document) return 'gone';
  const value = valueAt(document, conflict.path);
  if (sameJson(value, conflict.mine)) return 'mine';
  if (sameJson(value, conflict.theirs)) return 'theirs';
  return settleConflict(document, conflict, 'theirs') === null ? 'gone' : 'other';
}

function textOf(value: unknown): string | null {
  return value === undefined ? null : JSON.stringify(value);
}
