import { fail, type Result } from '../result/index.ts';
import type { Log } from './channel.ts';
import { createLogReader, type LogReaderOptions } from './log-reader.ts';

export type ReadLogOptions = LogReaderOptions & {
  /** Told the share of the bytes that has been read. */
  readonly onProgress?: (share: number) => void;
  /** Asked between pieces of some 5 ms; true ends with the problem log/cancelled. */
  readonly isCancelled?: () => boolean;
};

const pieceSize = 512 * 1024;

/**
 * A whole log file, from its bytes to channels.
 *
 * @param bytes  the file as it lies on disk, in any of the encodings of LogStyle
 *
 * Errors: log/... , each with the file and where known the line or column.
 */
export function readLog(bytes: Uint8Array, options: ReadLogOptions): Result<Log> {
  const reader = createLogReader({ ...options, size: bytes.length });
  for (let at = 0; at < bytes.length; at += pieceSize) {
    if (options.isCancelled?.())
      return fail({ code: 'log/cancelled', facts: {}, where: { file: options.file } });
    const problem = reader.push(bytes.subarray(at, at + pieceSize));
    if (problem) return fail(problem);
    options.onProgress?.(Math.min(1, (at + pieceSize) / bytes.length));
  }
  return reader.finish();
}
