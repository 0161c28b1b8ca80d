import type { RequestContext } from '../../core/contract/index.ts';
import { type Log, readLog } from '../../core/log/index.ts';
import type { Result } from '../../core/result/index.ts';
import type { RunRecord } from '../../core/session/index.ts';
import { type OpenSession, openSource, readSource } from '../store/index.ts';
import { hireCrew, type LogCrew } from './log-crew.ts';

/** Smaller logs are read faster than a worker starts. */
const inlineUpTo_bytes = 3_000_000;

/** Whether a log is worth a worker of its own. */
export function isBig(record: Pick<RunRecord, 'size_bytes'>): boolean {
  return record.size_bytes > inlineUpTo_bytes;
}

/**
 * The log of a run, from its bytes on disk to channels. A big one goes part by part through a crew; one is
 * hired for it where none is given.
 *
 * Errors: those of readLog, of readSource; contract/cancelled.
 */
export async function readStoredLog(
  open: OpenSession,
  record: RunRecord,
  context: RequestContext,
  given: LogCrew | null = null,
): Promise<Result<Log>> {
  const options = { file: record.name, mapping: record.columns };
  if (!isBig(record)) {
    const bytes = await readSource(open, record.id);
    return bytes.ok ? readLog(bytes.value, options) : bytes;
  }
  const source = await openSource(open, record.id);
  if (!source.ok) return source;
  const crew = given ?? hireCrew();
  try {
    const { size } = source.value;
    const tellShare = (share: number) => context.progress(share, record.name);
    return await crew.read(source.value, { ...options, size }, { signal: context.signal, tellShare });
  } finally {
    if (!given) crew.end();
    await source.value.close();
  }
}
