import { parentPort } from 'node:worker_threads';
import { BlockReader, type BlockStyle } from '../../core/log/index.ts';
import type { FromRowWorker, ToRowWorker } from './log-messages.ts';
import { rehearsalText } from './rehearsal-text.ts';

/*
 * Where the second half of a big log's rows is read, part by part, beside the worker that reads the rest of it.
 */

/** Bytes at a time and rounds in which the engine compiles what reads rows. */
const piece = 4096;
const rounds = 4;

let reader: BlockReader | null = null;

function tell(message: FromRowWorker, transfer: ArrayBuffer[] = []): void {
  parentPort?.postMessage(message, transfer);
}

function rehearse(): void {
  const text = rehearsalText();
  const from = text.indexOf('\n') + 1;
  const cells = text.slice(0, from).split(',').length;
  const bytes = new TextEncoder().encode(text.slice(from));
  const style: BlockStyle = { delimiter: ',', decimal: '.', cells, width: cells };
  const rehearsed = new BlockReader(style);
  const numbers = new Float64Array(new SharedArrayBuffer(8 * 64 * piece));
  for (let round = 0; round < rounds; round++) {
    for (let at = 0; at < bytes.length; ) {
      const end = bytes.subarray(at, at + piece).lastIndexOf(10) + 1;
      rehearsed.read(bytes.subarray(at, at + end), numbers);
      at += end;
    }
  }
}

parentPort?.on('message', (message: ToRowWorker) => {
  if (message.kind === 'style') {
    reader = new BlockReader(message.style);
    return;
  }
  if (!reader) return;
  const { place, part, numbers } = message;
  const block = reader.read(part, numbers);
  tell({ kind: 'rows', place, part, block, numbers }, [part.buffer]);
});
rehearse();
tell({ kind: 'ready' });
