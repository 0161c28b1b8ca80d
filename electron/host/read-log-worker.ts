import { createHash } from 'node:crypto';
import { parentPort } from 'node:worker_threads';
import { createLogReader, type LogReader } from '../../core/log/index.ts';
import { fail, type Problem } from '../../core/result/index.ts';
import type { FromReader, ToReader } from './read-stored-log.ts';

/** Reads a log that arrives in parts: each is hashed, read and let go. */
let reader: LogReader | null = null;
let problem: Problem | null = null;
const hash = createHash('sha256');

function tell(message: FromReader, transfer: ArrayBuffer[] = []): void {
  parentPort?.postMessage(message, transfer);
}

parentPort?.on('message', (message: ToReader) => {
  if (message.kind === 'start') reader = createLogReader(message.options);
  else if (message.kind === 'part') {
    hash.update(message.part);
    // What cannot be read is hashed to its end all the same: damage is the better explanation.
    if (!problem) problem = reader?.push(message.part) ?? null;
    tell({ kind: 'taken' });
  } else if (reader) {
    const result = problem ? fail(problem) : reader.finish();
    const arrays = result.ok
      ? [result.value.time, ...result.value.channels.flatMap((c) => [c.values, c.flags])]
      : [];
    // Channels of one table may share a buffer; each can be handed over once.
    const buffers = new Set(arrays.map((a) => a.buffer as ArrayBuffer));
    tell({ kind: 'done', result, sha256: hash.digest('hex') }, [...buffers]);
  }
});
