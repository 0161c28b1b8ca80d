import { chmod, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

/** Every file of a folder with its content, for "nothing else changed". */
export async function contentsOf(folder: string): Promise<Record<string, string>> {
  const all: Record<string, string> = {};
  for (const entry of await readdir(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const path = join(entry.parentPath, entry.name);
    all[path.slice(folder.length + 1)] = (await readFile(path)).toString('latin1');
  }
  return all;
}

/** Changes a file as a text editor would. */
export async function editFile(path: string, change: (text: string) => string): Promise<void> {
  await writeFile(path, change(await readFile(path, 'utf8')));
}

/** Changes a file as a failing disk would. */
export async function flipBit(path: string, position: number, bit = 0): Promise<void> {
  await chmod(path, 0o644);
  const bytes = await readFile(path);
  bytes[position] = (bytes[position] ?? 0) ^ (1 << bit);
  await writeFile(path, bytes);
}
