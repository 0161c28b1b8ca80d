import { parentPort } from 'node:worker_threads';
import { readLog } from '../../core/log/index.ts';
import type { ReadLogJob, ReadLogMessage } from './read-log-bytes.ts';

/** Progress of less than this is not worth a message. */
const step = 0.01;

parentPort?.once('message', ({ bytes, options }: ReadLogJob) => {
  let told = 0;
  const result = readLog(bytes, {
    ...options,
    onProgress: (share) => {
      if (share - told < step) return;
      told = share;
      parentPort?.postMessage({ progress: share } satisfies ReadLogMessage);
    },
  });
  const buffers = result.ok
    ? [result.value.time, ...result.value.channels.flatMap((c) => [c.values, c.flags])].map(
        (a) => a.buffer as ArrayBuffer,
      )
    : [];
  // Channels of one table may share a buffer; each can be handed over once.
  parentPort?.postMessage({ result } satisfies ReadLogMessage, [...new Set(buffers)]);
});
