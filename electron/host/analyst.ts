import type { RequestContext } from '../../core/contract/index.ts';
import { type Log, loadFormulaParser } from '../../core/log/index.ts';
import { fail, ok, type Result } from '../../core/result/index.ts';
import { analyseLog, type RunAnalysis, type RunRecord } from '../../core/session/index.ts';
import { type OpenSession, readChannelCache, writeChannelCache } from '../store/index.ts';
import { cacheKey, cacheOfLog, logOfCache } from './log-cache.ts';
import { readStoredLog } from './read-stored-log.ts';

/** What was found in the logs of a session, kept until the log's reading, the car or the air changes. */
export type Analyst = {
  readonly one: (runId: string, context: RequestContext) => Promise<Result<RunAnalysis>>;
  readonly all: (context: RequestContext) => Promise<ReadonlyMap<string, Result<RunAnalysis>>>;
};

type Kept<T> = { readonly key: string; readonly value: Promise<Result<T>> };

export function createAnalyst(open: OpenSession, programVersion: string): Analyst {
  const logs = new Map<string, Kept<Log>>();
  const analyses = new Map<string, Kept<RunAnalysis>>();

  function keptLog(record: RunRecord, context: RequestContext): Promise<Result<Log>> {
    const key = JSON.stringify([record.sha256, record.columns]);
    const kept = logs.get(record.id);
    if (kept?.key === key) return kept.value;
    const value = readLogOf(record, context);
    logs.set(record.id, { key, value });
    // A cancelled or failed read is tried again when asked again.
    value.then(
      (result) => !result.ok && logs.get(record.id)?.value === value && logs.delete(record.id),
      () => logs.delete(record.id),
    );
    return value;
  }

  async function readLogOf(record: RunRecord, context: RequestContext): Promise<Result<Log>> {
    const key = cacheKey(record, programVersion);
    const cached = await readChannelCache(open, record.id, key);
    const kept = cached ? logOfCache(cached) : null;
    if (kept) return ok(kept);
    const log = await readStoredLog(open, record, context);
    // A session that may only be read stays without; reading the log again gives the same.
    if (log.ok) await writeChannelCache(open, record.id, cacheOfLog(log.value, key));
    return log;
  }

  async function analyse(record: RunRecord, context: RequestContext): Promise<Result<RunAnalysis>> {
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
