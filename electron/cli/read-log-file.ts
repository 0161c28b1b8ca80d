import { type FileHandle, open } from 'node:fs/promises';
import { createLogReader, type Log } from '../../core/log/index.ts';
import { fail, type Result } from '../../core/result/index.ts';
import { unreadable } from './files.ts';

/** Bytes of a part: some milliseconds of reading. */
const partLength = 1 << 20;

/**
 * A log straight from its file, which never lies in memory whole: while one part is read the next comes from the disk.
 *
 * Errors: those of readLog, terminal/file-unreadable.
 */
export async function readLogFile(path: string): Promise<Result<Log>> {
  let handle: FileHandle | null = null;
  try {
    handle = await open(path);
    const reader = createLogReader({ file: path, size: (await handle.stat()).size });
    for await (const part of partsAhead(handle)) {
      const problem = reader.push(part);
      if (problem) return fail(problem);
    }
    return reader.finish();
  } catch (error) {
    // What carries no code of the system is a fault of our own.
    if ((error as NodeJS.ErrnoException).code === undefined) throw error;
    return unreadable(path, error);
  } finally {
    await handle?.close();
  }
}

/** The parts of a file in two buffers by turns: each is good until the next but one is asked for. */
async function* partsAhead(handle: FileHandle): AsyncGenerator<Uint8Array> {
  let part = new Uint8Array(partLength);
  let next = new Uint8Array(partLength);
  let coming = handle.read(part);
  try {
    for (;;) {
      const { bytesRead } = await coming;
      if (bytesRead === 0) return;
      coming = handle.read(next);
      yield part.subarray(0, bytesRead);
      [part, next] = [next, part];
    }
  } finally {
    // The file must not be closed under a read.
    await coming.catch(() => undefined);
  }
}
