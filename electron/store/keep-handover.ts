import { join } from 'node:path';
import { ok, type Result } from '../../core/result/index.ts';
import { attempt } from './disk-problem.ts';
import type { FileSystem } from './file-system.ts';
import { ensureFolder } from './history.ts';
import { folderNames } from './layout.ts';
import { nodeFileSystem } from './node-file-system.ts';
import { replaceFile } from './replace-file.ts';
import { isPortableName } from './safe-name.ts';

/**
 * Keeps a finished summary in the session's handover folder, durably. One of the same name, made on the same day
 * in the same form, is replaced.
 *
 * @returns  its path inside the session
 *
 * Errors: disk problems.
 */
export async function keepHandover(
  folder: string,
  fileName: string,
  content: Uint8Array,
  fs: FileSystem = nodeFileSystem,
): Promise<Result<string>> {
  if (!isPortableName(fileName)) throw new Error(`"${fileName}" is no name of a summary`);
  const place = join(folder, folderNames.handover);
  const path = join(place, fileName);
  return attempt(path, async () => {
    await ensureFolder(place, fs);
    await replaceFile(path, content, fs);
    return ok(`${folderNames.handover}/${fileName}`);
  });
}
