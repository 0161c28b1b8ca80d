import { createHash } from 'node:crypto';
import { basename, dirname, join, resolve } from 'node:path';
import { Zip, ZipDeflate } from 'fflate';
import { fail, ok, type Result } from '../../core/result/index.ts';
import { CalledOff } from './called-off.ts';
import { attemptInto } from './disk-problem.ts';
import { errorCode, type FileSystem } from './file-system.ts';
import { nodeFileSystem } from './node-file-system.ts';
import { removeStale } from './recover.ts';
import { replaceFile } from './replace-file.ts';
import { partsOf } from './sha256.ts';
import { hashed, isLeftOut, type UnzipOptions } from './unzip-session.ts';
import { checksumsName, writeChecksums } from './zip-checksums.ts';

export type ZippedSession = {
  readonly path: string;
  readonly files: number;
  /** Of the files, before they were packed. */
  readonly bytes: number;
  /** Of the zip itself, to be compared at the other end. */
  readonly sha256: string;
};

/** Beyond these the plain zip format ends. */
const most = { files: 65_000, bytes: 2 ** 32 - 2 ** 20 };
/** Balance of size and time: logs shrink to about a tenth. */
const level = 6;

/**
 * Packs a whole session folder into one zip, with a list of SHA-256 sums that any system can check. Caches,
 * locks and half-written files stay out; links are never followed. The zip appears under its name only once it
 * is whole.
 *
 * Errors: store/not-a-session, store/no-folder, store/zip-too-large (copy the folder instead), contract/cancelled, disk problems.
 */
export function zipSession(
  folder: string,
  target: string,
  options: UnzipOptions & { readonly now: string },
): Promise<Result<ZippedSession>> {
  const { fs = nodeFileSystem } = options;
  const folderOfZip = dirname(resolve(target));
  return attemptInto(folderOfZip, target, fs, async () => {
    const files = await filesIn(folder, '', fs);
    if (!files.some(({ path }) => path === 'session.json')) {
      return fail({ code: 'store/not-a-session', facts: { path: folder } });
    }
    const bytes = files.reduce((sum, file) => sum + file.size, 0);
    if (files.length > most.files || bytes > most.bytes) {
      return fail({ code: 'store/zip-too-large', facts: { name: basename(target) } });
    }
    await removeStale(folderOfZip, fs);
    const hash = createHash('sha256');
    try {
      await replaceFile(target, hashed(packed(folder, files, bytes, options, fs), hash), fs);
    } catch (error) {
      if (error instanceof CalledOff) return fail({ code: 'contract/cancelled', facts: {} });
      throw error;
    }
    return ok({ path: target, files: files.length, bytes, sha256: hash.digest('hex') });
  });
}

type Listed = { readonly path: string; readonly size: number };

async function filesIn(folder: string, shown: string, fs: FileSystem): Promise<Listed[]> {
  const files: Listed[] = [];
  for (const { name, kind } of await fs.list(join(folder, shown))) {
    const path = shown === '' ? name : `${shown}/${name}`;
    if (isLeftOut(path) || path === checksumsName) continue;
    if (kind === 'folder') files.push(...(await filesIn(folder, path, fs)));
    if (kind === 'file') files.push({ path, size: (await fs.stat(join(folder, path)))?.size ?? 0 });
  }
  return files;
}

async function* packed(
  folder: string,
  files: readonly Listed[],
  total: number,
  { now, progress, signal }: UnzipOptions & { readonly now: string },
  fs: FileSystem,
): AsyncGenerator<Uint8Array> {
  const ready: Uint8Array[] = [];
  const zip = new Zip((error, part) => {
    if (error) throw error;
    ready.push(part);
  });
  const top = basename(resolve(folder));
  const sums = new Map<string, string>();
  let done = 0;
  for (const { path } of files) {
    const hash = createHash('sha256');
    const reader = await openIfThere(join(folder, path), fs);
    // Thinned out of history a moment ago.
    if (!reader) continue;
    const entry = new ZipDeflate(`${top}/${path}`, { level });
    entry.mtime = now;
    zip.add(entry);
    try {
      for await (const part of partsOf(reader)) {
        if (signal?.aborted) throw new CalledOff();
        hash.update(part);
        entry.push(part.slice());
        done += part.length;
        progress?.(Math.min(1, done / Math.max(1, total)));
        yield* ready.splice(0);
      }
    } finally {
      await reader.close();
    }
    entry.push(new Uint8Array(), true);
    sums.set(path, hash.digest('hex'));
    yield* ready.splice(0);
  }
  const list = new ZipDeflate(`${top}/${checksumsName}`, { level });
  list.mtime = now;
  zip.add(list);
  list.push(new TextEncoder().encode(writeChecksums(sums)), true);
  zip.end();
  yield* ready.splice(0);
}

async function openIfThere(path: string, fs: FileSystem) {
  try {
    return await fs.openRead(path);
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return null;
    throw error;
  }
}
