import type { RequestContext, RunSummary, Snapshot } from '../../core/contract/index.ts';
import { whyNoLog } from '../../core/log/index.ts';
import { fail, type Note, ok, type Problem, type Result } from '../../core/result/index.ts';
import {
  applyEdit,
  type RunAnalysis,
  type RunRecord,
  type Session,
  type SessionEdit,
  type SessionState,
  sameJson,
} from '../../core/session/index.ts';
import {
  closeSession,
  type ImportedLog,
  importLog,
  keepHandover,
  type LogSource,
  lostSources,
  type MergeReport,
  mergeSession,
  type OpenSession,
  saveRun,
  saveSession,
  whyNotWritable,
} from '../store/index.ts';
import { type Analyst, createAnalyst } from './analyst.ts';
import { orCalledOff } from './called-off.ts';
import { isLongerCopy, standInEdits } from './longer-copy.ts';
import { settledState } from './merge-copies.ts';
import { summaryOfRun } from './run-summary.ts';
import { createUndoHistory } from './undo-history.ts';

/**
 * The one open session: its folder, what can be undone, and what was found in its logs. Every change passes
 * here, is saved before it is told, and raises the revision.
 */
export type SessionDesk = {
  readonly folder: string;
  readonly state: () => SessionState;
  /** Null where the session may be written now: another program may hold it, or have taken it over. */
  readonly whyNotWritable: () => Promise<Problem | null>;
  /** Runs whose log was taken out of the folder since it was opened. */
  readonly lostSources: () => Promise<readonly Problem[]>;
  readonly snapshot: (context: RequestContext) => Promise<Snapshot>;
  readonly analyses: (context: RequestContext) => Promise<ReadonlyMap<string, RunAnalysis>>;
  readonly edit: (edits: readonly SessionEdit[], joinKey: string | null) => Promise<Result<void>>;
  /** Brings another copy of the session, in a folder, into this one. */
  readonly merge: (folder: string) => Promise<Result<MergeReport>>;
  /** Takes one side of what a merge left to decide. */
  readonly settle: (choice: Parameters<typeof settledState>[2]) => Promise<Result<void>>;
  readonly undo: () => Promise<Result<void>>;
  readonly redo: () => Promise<Result<void>>;
  /** Gets ready for a log of so many bytes that is about to come. */
  readonly expect: (size_bytes: number) => void;
  readonly take: (
    source: LogSource,
    entryId: string | null,
    context: RequestContext,
  ) => Promise<Result<ImportedLog>>;
  /** Puts a run into an entry, unless it stands in one already. */
  readonly join: (record: RunRecord, entryId: string | null) => Promise<Result<void>>;
  /** Makes an earlier version of session.json the present one. */
  readonly restore: (session: Session) => Promise<Result<void>>;
  /**
   * Lets a run that is a longer copy of another stand in its place in the ledger, with its notes, columns and
   * pull edits. The shorter one stays a run. False where it is no longer copy.
   */
  readonly standInFor: (runId: string, shorterId: string) => Promise<Result<boolean>>;
  /** Whether a run holds nothing but the beginning of another. */
  readonly isPartOf: (runId: string, ofRunId: string) => Promise<Result<boolean>>;
  readonly summaryOf: (runId: string, context: RequestContext) => Promise<RunSummary | null>;
  /** Keeps a finished summary in the session's folder; its path there, null where the session is only read. */
  readonly keepHandover: (fileName: string, content: Uint8Array) => Promise<Result<string | null>>;
  readonly close: () => Promise<Result<void>>;
};

export function createSessionDesk(
  open: OpenSession,
  programVersion: string,
  now: () => string,
  onChange: (revision: number) => void,
  firstRevision = 1,
): SessionDesk {
  const history = createUndoHistory();
  const analyst: Analyst = createAnalyst(open, programVersion);
  const imports = new Set<Promise<unknown>>();
  let revision = firstRevision;
  let queue: Promise<unknown> = Promise.resolve();

  const state = (): SessionState => ({
    session: open.session,
    runs: Object.fromEntries([...open.runs].map(([id, run]) => [id, run.record])),
  });

  /** One change at a time: an edit is computed on what the one before it saved. */
  function inTurn<T>(action: () => Promise<T>): Promise<T> {
    const turn = queue.then(action);
    queue = turn.catch(() => undefined);
    return turn;
  }

  async function save(before: SessionState, after: SessionState): Promise<Result<void>> {
    if (after.session !== before.session) {
      const saved = await saveSession(open, after.session, now());
      if (!saved.ok) return saved;
    }
    for (const [id, record] of Object.entries(after.runs)) {
      if (record === before.runs[id]) continue;
      const saved = await saveRun(open, record, now());
      if (!saved.ok) return saved;
    }
    revision++;
    onChange(revision);
    return ok(undefined);
  }

  /** The target with every run that was imported since: undo takes back edits, never an import. */
  function withNewRuns(target: SessionState): SessionState {
    const current = state();
    const newer = Object.entries(current.runs).filter(([id]) => !(id in target.runs));
    return newer.length === 0
      ? target
      : { ...target, runs: { ...target.runs, ...Object.fromEntries(newer) } };
  }

  async function summaries(context: RequestContext): Promise<RunSummary[]> {
    const found = await analyst.all(context);
    return [...open.runs.values()].map(({ record }) => summaryOfRun(record, found.get(record.id)));
  }

  function edit(edits: readonly SessionEdit[], joinKey: string | null, title: string): Promise<Result<void>> {
    return become(title, joinKey, async (before) => {
      let after = before;
      for (const one of edits) {
        const edited = applyEdit(after, one);
        if (!edited.ok) return edited;
        after = edited.value;
      }
      return ok(after);
    });
  }

  /** Goes to a new state: saved first, then remembered for undo. */
  function become(
    title: string,
    joinKey: string | null,
    next: (before: SessionState) => Promise<Result<SessionState>>,
  ): Promise<Result<void>> {
    return inTurn(async () => {
      const before = state();
      const after = await next(before);
      if (!after.ok) return after;
      const saved = await save(before, after.value);
      if (saved.ok) history.record(before, after.value, title, joinKey);
      return saved;
    });
  }

  return {
    folder: open.folder,
    state,
    whyNotWritable: () => whyNotWritable(open),
    lostSources: () => lostSources(open),
    analyses: async (context) => {
      const found = await analyst.all(context);
      const good = [...found].flatMap(([id, result]) => (result.ok ? [[id, result.value] as const] : []));
      return new Map(good);
    },
    snapshot: async (context) => ({
      revision,
      folder: open.folder,
      session: open.session,
      runs: await summaries(context),
      undoTitle: history.undoTitle,
      redoTitle: history.redoTitle,
      readOnly: open.readOnly as Problem | null,
      notices: [...open.notices] as Note[],
    }),
    edit: (edits, joinKey) => edit(edits, joinKey, edits[0]?.type ?? ''),
    // A folder keeps its own identity: merging knows copies by it.
    restore: (session) =>
      become('history.restore', null, async (before) =>
        ok({ ...before, session: { ...session, id: before.session.id } }),
      ),
    settle: (choice) => become('merge.settle', null, (before) => settledState(open.folder, before, choice)),
    merge: (folder) =>
      inTurn(async () => {
        const before = state();
        const merged = await mergeSession(open, folder, now());
        if (!sameJson(before, state())) {
          history.record(before, state(), 'session.merge', null);
          revision++;
          onChange(revision);
        }
        return merged;
      }),
    standInFor: async (runId, shorterId) => {
      const isLonger = await isLongerCopy(open, runId, shorterId);
      if (!isLonger.ok || !isLonger.value) return isLonger;
      const done = await edit(standInEdits(state(), runId, shorterId), null, 'entry.takeRun');
      return done.ok ? ok(true) : done;
    },
    isPartOf: (runId, ofRunId) => isLongerCopy(open, ofRunId, runId),
    join: (record, entryId) => {
      const isPlaced = open.session.ledger.some((e) => e.runs.some((r) => r.runId === record.id));
      return entryId === null || isPlaced
        ? Promise.resolve(ok(undefined))
        : inTurn(() => attach(record, entryId));
    },
    undo: () =>
      inTurn(async () => {
        const target = history.undo();
        if (!target) return fail({ code: 'session/nothing-to-undo', facts: {} });
        return save(state(), withNewRuns(target));
      }),
    redo: () =>
      inTurn(async () => {
        const target = history.redo();
        if (!target) return fail({ code: 'session/nothing-to-redo', facts: {} });
        return save(state(), withNewRuns(target));
      }),
    expect: analyst.expect,
    take: async (source, entryId, { signal }) => {
      // What never was a log is left where it is; a run that nothing can be read from would only stand in the way.
      const hooks = { whyNot: whyNoLog, onCopied: analyst.expect, isCancelled: () => signal.aborted };
      const importing = importLog(open, source, {}, now(), hooks);
      // The flush of a big file can't be hurried; nobody who called it off has to wait for it.
      importing.catch(() => undefined).finally(() => imports.delete(importing));
      imports.add(importing);
      const imported = await orCalledOff(importing, signal);
      if (!imported.ok) return imported;
      const { record } = imported.value;
      if (entryId !== null) {
        const attached = await inTurn(() => attach(record, entryId));
        if (!attached.ok) return attached;
      } else {
        revision++;
        onChange(revision);
      }
      return imported;
    },
    summaryOf: async (runId, context) => {
      const run = open.runs.get(runId);
      return run ? summaryOfRun(run.record, await analyst.one(runId, context)) : null;
    },
    keepHandover: async (fileName, content) => {
      if (open.readOnly) return ok(null);
      return inTurn(() => keepHandover(open.folder, fileName, content));
    },
    close: async () => {
      await queue;
      await Promise.allSettled(imports);
      await analyst.close();
      return closeSession(open);
    },
  };

  /** Joins a fresh run to its entry. Part of the import: undo takes it off the entry, the run stays. */
  async function attach(record: RunRecord, entryId: string): Promise<Result<void>> {
    const before = state();
    if (before.session.ledger.find((e) => e.id === entryId)?.runs.some((r) => r.runId === record.id)) {
      return ok(undefined);
    }
    const after = applyEdit(before, {
      type: 'entry.takeRun',
      entryId,
      runId: record.id,
      from_s: null,
      to_s: null,
    });
    if (!after.ok) return after;
    const saved = await save(before, after.value);
    if (saved.ok) history.record(before, after.value, 'entry.takeRun', null);
    return saved;
  }
}
