import { Worker } from 'node:worker_threads';
import type { RequestContext } from '../../core/contract/index.ts';
import { type Log, type ReadLogOptions, readLog } from '../../core/log/index.ts';
import { fail, type Result } from '../../core/result/index.ts';

/** Smaller logs are read faster than a worker starts. */
const inlineUpTo_bytes = 3_000_000;

/** What goes into the worker and what comes out. */
export type ReadLogJob = {
  readonly bytes: Uint8Array;
  readonly options: Pick<ReadLogOptions, 'file' | 'mapping'>;
};
export type ReadLogMessage = { readonly progress: number } | { readonly result: Result<Log> };

/**
 * A log's bytes to channels. A large one is read in a worker, so that the host goes on answering and a cancel
 * takes effect at once.
 *
 * Errors: those of readLog; contract/cancelled.
 */
export function readLogBytes(
  bytes: Uint8Array,
  options: ReadLogJob['options'],
  context: RequestContext,
): Promise<Result<Log>> {
  if (bytes.length <= inlineUpTo_bytes) return Promise.resolve(readLog(bytes, options));
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./read-log-worker.ts', import.meta.url));
    const end = (result: Result<Log>) => {
      clearInterval(watch);
      void worker.terminate();
      resolve(result);
    };
    // The signal may come over a wire and has no event of its own.
    const watch = setInterval(() => {
      if (context.signal.aborted) end(fail({ code: 'contract/cancelled', facts: {} }));
    }, 50);
    worker.on('message', (message: ReadLogMessage) => {
      if ('progress' in message) context.progress(message.progress, options.file);
      else end(message.result);
    });
    worker.on('error', (error) => {
      clearInterval(watch);
      reject(error);
    });
    worker.postMessage({ bytes, options } satisfies ReadLogJob);
  });
}
