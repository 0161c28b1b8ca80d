import { dirname, join } from 'node:path';
import type { FileSystem } from './file-system.ts';
import { ensureFolder, stampOf } from './history.ts';
import { folderNames } from './layout.ts';

/**
 * Moves a damaged file out of the way, never over anything and never away for good.
 *
 * @param shown  its path inside the session, with slashes
 * @returns      its new path inside the session, `set-aside/20270314T102205Z-runs--a--run.json`
 */
export async function setAside(folder: string, shown: string, now: string, fs: FileSystem): Promise<string> {
  const from = join(folder, shown);
  const to = join(folder, folderNames.setAside);
  await ensureFolder(to, fs);
  const taken = new Set((await fs.list(to)).map((entry) => entry.name));
  const plain = `${stampOf(now)}-${shown.replaceAll('/', '--')}`;
  let name = plain;
  for (let n = 2; taken.has(name); n++) name = `${plain}-${n}`;
  await fs.rename(from, join(to, name));
  await fs.syncFolder(to);
  await fs.syncFolder(dirname(from));
  return `${folderNames.setAside}/${name}`;
}
