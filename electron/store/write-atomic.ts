import { dirname } from 'node:path';
import { ok, type Result } from '../../core/result/index.ts';
import { attemptInto } from './disk-problem.ts';
import type { FileSystem } from './file-system.ts';
import { nodeFileSystem } from './node-file-system.ts';
import { type Content, replaceFile } from './replace-file.ts';

/**
 * Creates or replaces a file, durably and in one step: see `replaceFile`, of which this is the form for callers
 * outside the store.
 *
 * Errors: store/disk-full, store/not-allowed, store/no-folder and the other disk problems; the
 * old content then still stands.
 */
export function writeAtomic(
  path: string,
  content: Content,
  fs: FileSystem = nodeFileSystem,
): Promise<Result<void>> {
  return attemptInto(dirname(path), path, fs, async () => {
    await replaceFile(path, content, fs);
    return ok(undefined);
  });
}
