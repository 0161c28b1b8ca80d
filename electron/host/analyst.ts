import type { RequestContext } from '../../core/contract/index.ts';
import { type Log, loadFormulaParser } from '../../core/log/index.ts';
import { fail, ok, type Result } from '../../core/result/index.ts';
import { analyseLog, type RunAnalysis, type RunRecord } from '../../core/session/index.ts';
import { type OpenSession, readChannelCache, writeChannelCache } from '../store/index.ts';
import { orCalledOff } from './called-off.ts';
import { createCrewPool } from './crew-pool.ts';
import { cacheKey, cacheOfLog, logOfCache } from './log-cache.ts';
import type { LogCrew } from './log-crew.ts';
import { isBig, readStoredLog } from './read-stored-log.ts';

/** What was found in the logs of a session, kept until the log's reading, the car or the air changes. */
export type Analyst = {
  readonly one: (runId: string, context: RequestContext) => Promise<Result<RunAnalysis>>;
  readonly all: (context: RequestContext) => Promise<ReadonlyMap<string, Result<RunAnalysis>>>;
  /** Gets ready for a log of so many bytes that is about to come. */
  readonly expect: (size_bytes: number) => void;
  /** Comes true once no cache is being written any more. */
  readonly settled: () => Promise<unknown>;
  readonly close: () => Promise<void>;
};

/** Share of the work on a big log that goes into reading it, for the bar (measured). */
const readingShare = 0.75;

type Kept<T> = { readonly key: string; readonly value: Promise<Result<T>> };

export function createAnalyst(open: OpenSession, programVersion: string): Analyst {
  const logs = new Map<string, Kept<Log>>();
  const analyses = new Map<string, Kept<RunAnalysis>>();
  const written = new Set<Promise<unknown>>();
  const crews = createCrewPool();
  if ([...open.runs.values()].some(({ record }) => isBig(record))) crews.prepare();

  function keptLog(
    record: RunRecord,
    context: RequestContext,
    crew: LogCrew | null = null,
  ): Promise<Result<Log>> {
    const key = JSON.stringify([record.sha256, record.columns]);
    const kept = logs.get(record.id);
    if (kept?.key === key) return kept.value;
    const value = readLogOf(record, context, crew);
    logs.set(record.id, { key, value });
    // A cancelled or failed read is tried again when asked again.
    value.then(
      (result) => !result.ok && logs.get(record.id)?.value === value && logs.delete(record.id),
      () => logs.delete(record.id),
    );
    return value;
  }

  async function readLogOf(
    record: RunRecord,
    context: RequestContext,
    crew: LogCrew | null,
  ): Promise<Result<Log>> {
    const key = cacheKey(record, programVersion);
    const cached = await orCalledOff(readChannelCache(open, record.id, key).then(ok), context.signal);
    if (!cached.ok) return cached;
    const kept = cached.value ? logOfCache(cached.value) : null;
    if (kept) return ok(kept);
    const log = await readStoredLog(open, record, context, crew);
    if (log.ok) {
      // Nobody waits for it. A session that may only be read stays without; reading the log again gives the same.
      const writing = writeChannelCache(open, record.id, cacheOfLog(log.value, key))
        .catch(() => undefined)
        .finally(() => written.delete(writing));
      written.add(writing);
    }
    return log;
  }

  /** A big log keeps two workers busy, and the host stays free. */
  async function analyseBig(record: RunRecord, context: RequestContext): Promise<Result<RunAnalysis>> {
    const tell = (from: number, to: number) => (share: number) =>
      context.progress(from + (to - from) * share, record.name);
    return crews.lend(async (crew) => {
      const log = await keptLog(record, { ...context, progress: tell(0, readingShare) }, crew);
      if (!log.ok) return log;
      const { car, derivedChannels } = open.session;
      const conditions = record.conditions ?? open.session.conditions;
      const task = { runId: record.id, record, car, conditions, derivedChannels };
      return crew.analyse(log.value, task, { signal: context.signal, tellShare: tell(readingShare, 1) });
    });
  }

  async function analyse(record: RunRecord, context: RequestContext): Promise<Result<RunAnalysis>> {
    if (isBig(record)) return analyseBig(record, context);
    const log = await keptLog(record, context);
    if (!log.ok) return log;
    const conditions = record.conditions ?? open.session.conditions;
    const { car, derivedChannels } = open.session;
    const derived =
      derivedChannels.length > 0 ? { channels: derivedChannels, parser: await loadFormulaParser() } : null;
    return ok(analyseLog(log.value, { runId: record.id, record, car, conditions, derived }));
  }

  function one(runId: string, context: RequestContext): Promise<Result<RunAnalysis>> {
    const record = open.runs.get(runId)?.record;
    if (!record) return Promise.resolve(fail({ code: 'session/no-run', facts: { runId } }));
    const { session } = open;
    const { sha256, columns, pullEdits, conditions } = record;
    const air = conditions ?? session.conditions;
    const key = JSON.stringify([sha256, columns, pullEdits, air, session.car, session.derivedChannels]);
    const kept = analyses.get(runId);
    if (kept?.key === key) return kept.value;
    const value = analyse(record, context);
    analyses.set(runId, { key, value });
    value.then(
      (result) => !result.ok && analyses.get(runId)?.value === value && analyses.delete(runId),
      () => analyses.delete(runId),
    );
    return value;
  }

  return {
    one,
    expect: (size_bytes) => {
      if (isBig({ size_bytes })) crews.prepare();
    },
    settled: () => Promise.all(written),
    close: async () => {
      crews.close();
      await Promise.all(written);
    },
    all: async (context) => {
      const found = new Map<string, Result<RunAnalysis>>();
      const ids = [...open.runs.keys()];
      for (const [i, id] of ids.entries()) {
        if (context.signal.aborted) break;
        found.set(id, await one(id, context));
        context.progress((i + 1) / ids.length, open.runs.get(id)?.record.name ?? id);
      }
      return found;
    },
  };
}
