import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { ok, type Result } from '../../core/result/index.ts';
import { attempt } from './disk-problem.ts';
import { folderNames } from './layout.ts';
import { isPortableName } from './safe-name.ts';
import { writeAtomic } from './write-atomic.ts';

/**
 * Keeps a finished summary in the session's handover folder, durably. One of the same name, made on the same day
 * in the same form, is replaced.
 *
 * @returns  its path inside the session
 *
 * Errors: the disk problems of writeAtomic.
 */
export async function keepHandover(
  folder: string,
  fileName: string,
  content: Uint8Array,
): Promise<Result<string>> {
  if (!isPortableName(fileName)) throw new Error(`"${fileName}" is no name of a summary`);
  const place = join(folder, folderNames.handover);
  const made = await attempt(place, async () => {
    await mkdir(place, { recursive: true });
    return ok(undefined);
  });
  if (!made.ok) return made;
  const written = await writeAtomic(join(place, fileName), content);
  return written.ok ? ok(`${folderNames.handover}/${fileName}`) : written;
}
