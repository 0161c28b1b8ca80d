import { Worker } from 'node:worker_threads';
import type { RequestContext } from '../../core/contract/index.ts';
import { type Log, type LogReaderOptions, readLog } from '../../core/log/index.ts';
import { fail, type Result } from '../../core/result/index.ts';
import type { RunRecord } from '../../core/session/index.ts';
import { type OpenSession, openSource, readSource, type SourceStream } from '../store/index.ts';

/** Smaller logs are read faster than a worker starts. */
const inlineUpTo_bytes = 3_000_000;
/** Bytes of a part: some ten milliseconds of reading. */
const partLength = 1 << 20;
/** Parts on their way to the worker, so that neither waits for the other and memory stays bounded. */
const mostAhead = 3;
/** How often a cancel is looked for [ms]; the signal may come over a wire and has no event of its own. */
const watchEvery_ms = 20;

/** What goes into the worker and what comes out. */
export type ToReader =
  | { readonly kind: 'start'; readonly options: LogReaderOptions }
  | { readonly kind: 'part'; readonly part: Uint8Array }
  | { readonly kind: 'end' };
export type FromReader =
  | { readonly kind: 'taken' }
  | { readonly kind: 'done'; readonly result: Result<Log>; readonly sha256: string };

/**
 * The log of a run, from its bytes on disk to channels. A large one goes part by part through a worker: it never
 * lies in memory whole, the host goes on answering, and a cancel takes effect within a few hundredths of a second.
 *
 * Errors: those of readLog, of readSource; contract/cancelled.
 */
export async function readStoredLog(
  open: OpenSession,
  record: RunRecord,
  context: RequestContext,
): Promise<Result<Log>> {
  const options = { file: record.name, mapping: record.columns };
  if (record.size_bytes <= inlineUpTo_bytes) {
    const bytes = await readSource(open, record.id);
    return bytes.ok ? readLog(bytes.value, options) : bytes;
  }
  const source = await openSource(open, record.id);
  if (!source.ok) return source;
  try {
    return await throughWorker(source.value, { ...options, size: source.value.size }, context);
  } finally {
    await source.value.close();
  }
}

function throughWorker(
  source: SourceStream,
  options: LogReaderOptions,
  context: RequestContext,
): Promise<Result<Log>> {
  const worker = new Worker(new URL('./read-log-worker.ts', import.meta.url));
  let isOver = false;
  let ahead = 0;
  let whenTaken: () => void = () => undefined;
  const post = (message: ToReader, transfer: ArrayBuffer[] = []) => worker.postMessage(message, transfer);

  async function pump(): Promise<void> {
    post({ kind: 'start', options });
    let sent = 0;
    for (;;) {
      const part = new Uint8Array(partLength);
      const length = await source.read(part);
      if (isOver) return;
      if (length === 0) break;
      post({ kind: 'part', part: part.subarray(0, length) }, [part.buffer]);
      ahead++;
      sent += length;
      context.progress(Math.min(1, sent / Math.max(1, source.size)), options.file);
      while (ahead >= mostAhead && !isOver) {
        await new Promise<void>((resolve) => {
          whenTaken = resolve;
        });
      }
    }
    post({ kind: 'end' });
  }

  let watch: ReturnType<typeof setInterval> | undefined;
  let pumping: Promise<void> | undefined;
  return new Promise<Result<Log>>((resolve, reject) => {
    watch = setInterval(() => {
      if (context.signal.aborted) resolve(fail({ code: 'contract/cancelled', facts: {} }));
    }, watchEvery_ms);
    worker.on('message', (message: FromReader) => {
      if (message.kind === 'taken') {
        ahead--;
        whenTaken();
        return;
      }
      const damage = source.damage(message.sha256);
      resolve(damage ? fail(damage) : message.result);
    });
    worker.on('error', reject);
    pumping = pump().catch(reject);
  }).finally(async () => {
    isOver = true;
    clearInterval(watch);
    whenTaken();
    void worker.terminate();
    // The file must not be closed under a read.
    await pumping;
  });
}
