import type { RequestContext } from '../../core/contract/index.ts';
import { type DerivedChannel, type Log, loadFormulaParser } from '../../core/log/index.ts';
import { fail, ok, type Result } from '../../core/result/index.ts';
import { analyseLog, logOfCar, type RunAnalysis, type RunRecord } from '../../core/session/index.ts';
import { type ChannelCache, type OpenSession, readChannelCache, writeChannelCache } from '../store/index.ts';
import { orCalledOff } from './called-off.ts';
import { createCrewPool } from './crew-pool.ts';
import { analysisKey, analysisOfCache, cacheKey, cacheOfLog, logOfCache } from './log-cache.ts';
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

async function withParser(channels: readonly DerivedChannel[]) {
  return channels.length > 0 ? { channels, parser: await loadFormulaParser() } : null;
}

type Kept<T> = { readonly key: string; readonly value: Promise<Result<T>> };

/** A log, and its cache where it came from one. */
type ReadLog = { readonly log: Log; readonly cache: ChannelCache | null };

export function createAnalyst(open: OpenSession, programVersion: string): Analyst {
  const logs = new Map<string, Kept<ReadLog>>();
  const analyses = new Map<string, Kept<RunAnalysis>>();
  const written = new Set<Promise<unknown>>();
  /** Runs with a cache on disk, and what would bring it up to date. */
  const unkept = new Map<string, (() => void) | null>();
  const crews = createCrewPool();

  function keptLog(record: RunRecord, context: RequestContext): Promise<Result<ReadLog>> {
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

  async function readLogOf(record: RunRecord, context: RequestContext): Promise<Result<ReadLog>> {
    const key = cacheKey(record, programVersion);
    const cached = await orCalledOff(readChannelCache(open, record.id, key).then(ok), context.signal);
    if (!cached.ok) return cached;
    const kept = cached.value ? logOfCache(cached.value) : null;
    if (kept) return ok({ log: kept, cache: cached.value });
    const log = isBig(record)
      ? await crews.lend((crew) => readStoredLog(open, record, context, crew))
      : await readStoredLog(open, record, context);
    return log.ok ? ok({ log: log.value, cache: null }) : log;
  }

  /** Nobody waits for it. A session that may only be read stays without; reading the log again gives the same. */
  function keepInCache(record: RunRecord, log: Log, analysis: RunAnalysis, key: string | null): void {
    const analysed = key === null ? null : { analysis, key };
    const cache = cacheOfLog(log, cacheKey(record, programVersion), analysed);
    const writing = writeChannelCache(open, record.id, cache)
      .catch(() => undefined)
      .finally(() => written.delete(writing));
    written.add(writing);
  }

  async function analyse(record: RunRecord, context: RequestContext): Promise<Result<RunAnalysis>> {
    const { car, derivedChannels } = open.session;
    const conditions = record.conditions ?? open.session.conditions;
    // Channels by formula are not kept.
    const key = derivedChannels.length > 0 ? null : analysisKey(record, open.session, programVersion);
    const tell = (from: number, to: number) => (share: number) =>
      context.progress(from + (to - from) * share, record.name);
    const read = await keptLog(record, { ...context, progress: tell(0, readingShare) });
    if (!read.ok) return read;
    const { log, cache } = read.value;
    const known = cache && key !== null ? analysisOfCache(cache, logOfCar(log, car), key) : null;
    if (known) return ok(known);
    const task = { runId: record.id, record, car, conditions };
    // A big log keeps a worker busy, and the host stays free.
    const found = isBig(record)
      ? await crews.lend((crew) =>
          crew.analyse(
            log,
            { ...task, derivedChannels },
            { signal: context.signal, tellShare: tell(readingShare, 1) },
          ),
        )
      : ok(analyseLog(log, { ...task, derived: await withParser(derivedChannels) }));
    if (found.ok) {
      const keep = () => keepInCache(record, log, found.value, key);
      // After an edit the channels on disk still serve: only when the session is closed is the rest made new.
      const isOnDisk = cache !== null || unkept.has(record.id);
      unkept.set(record.id, isOnDisk ? keep : null);
      if (!isOnDisk) keep();
    }
    return found;
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
      for (const keep of unkept.values()) keep?.();
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
