import { createHash } from 'node:crypto';
import { basename, dirname, join } from 'node:path';
import { crc32 } from 'node:zlib';
import { Inflate } from 'fflate';
import { fail, ok, type Result } from '../../core/result/index.ts';
import { attempt, attemptInto } from './disk-problem.ts';
import { type FileSystem, isNameTaken, type Reader } from './file-system.ts';
import { ensureFolder } from './history.ts';
import { cacheName, sourceName } from './layout.ts';
import { isLockFile } from './lock.ts';
import { nodeFileSystem } from './node-file-system.ts';
import { pathInside } from './path-inside.ts';
import { removeStale, removeTree } from './recover.ts';
import { isUnfinished, unfinishedNameFor, writeDurably } from './replace-file.ts';
import { mostOfOneName, numberedName, safeFolderName } from './safe-name.ts';
import { checksumsName, readChecksums } from './zip-checksums.ts';
import { readZipDirectory, type ZipEntry } from './zip-directory.ts';

/** Packed bytes read at once. */
const partLength = 1 << 16;

export type UnzipOptions = {
  readonly fs?: FileSystem;
  readonly progress?: (share: number) => void;
  readonly signal?: { readonly aborted: boolean };
};

export type UnzippedSession = {
  readonly folder: string;
  readonly files: number;
  /** How many of them the list of SHA-256 sums inside named; 0 for a zip that another program made. */
  readonly checked: number;
};

/**
 * Unpacks a zipped session into a new folder in `parent`. The folder appears under its name only once every
 * entry has been unpacked, has its checksum and is on the disk; of a zip that is refused nothing stays.
 *
 * Errors: store/not-a-zip, store/zip-unsafe, store/zip-too-large, store/zip-no-session, store/zip-damaged, store/no-folder,
 *   contract/cancelled, disk problems.
 */
export function unzipSession(
  zipPath: string,
  parent: string,
  options: UnzipOptions = {},
): Promise<Result<UnzippedSession>> {
  const { fs = nodeFileSystem } = options;
  const name = basename(zipPath);
  return attemptInto(parent, parent, fs, async () => {
    const opened = await attempt(zipPath, async () => ok(await fs.openRead(zipPath, { followLinks: true })));
    if (!opened.ok) return opened;
    const reader = opened.value;
    const staged = join(parent, unfinishedNameFor('unzip'));
    try {
      const entries = await attempt(zipPath, () => readZipDirectory(reader, name));
      if (!entries.ok) return entries;
      const wanted = filesOfSession(entries.value);
      if (!wanted) return fail({ code: 'store/zip-no-session', facts: { name } });
      await removeStale(parent, fs);
      await fs.makeFolder(staged);
      const unpackedFiles = await unpackAll(reader, wanted.files, staged, name, options, fs);
      if (!unpackedFiles.ok) return unpackedFiles;
      const title = wanted.title ?? name.replace(/\.zip$/i, '');
      const folder = await settleDown(staged, parent, title, fs);
      return folder.ok ? ok({ folder: folder.value, ...unpackedFiles.value }) : folder;
    } finally {
      await reader.close();
      await removeTree(staged, fs).catch(() => undefined);
    }
  });
}

type Wanted = { readonly to: string; readonly entry: ZipEntry };

/** The session may stand at the top of the zip or in one folder; what other programs add is left out. */
function filesOfSession(
  entries: readonly ZipEntry[],
): { files: readonly Wanted[]; title: string | null } | null {
  const tops = entries
    .filter(({ path }) => /^([^/]+\/)?session\.json$/.test(path))
    .map(({ path }) => path.slice(0, -'session.json'.length));
  const [top] = tops;
  if (top === undefined || tops.length > 1) return null;
  const files = entries
    .filter(({ path }) => path.startsWith(top) && !isLeftOut(path))
    .map((entry) => ({ to: entry.path.slice(top.length), entry }));
  return { files, title: top === '' ? null : top.slice(0, -1) };
}

/** Locks and half-written files of the sender's program, caches, and what macOS strews in. */
export function isLeftOut(path: string): boolean {
  const parts = path.split('/');
  const last = parts.at(-1) ?? '';
  return (
    parts.includes('__MACOSX') ||
    parts.some(isUnfinished) ||
    isLockFile(last) ||
    last === cacheName ||
    last === '.DS_Store'
  );
}

async function unpackAll(
  reader: Reader,
  files: readonly Wanted[],
  staged: string,
  name: string,
  { progress, signal }: UnzipOptions,
  fs: FileSystem,
): Promise<Result<Omit<UnzippedSession, 'folder'>>> {
  const damaged = (entry: string) => fail({ code: 'store/zip-damaged', facts: { name, entry } });
  const sums = new Map<string, string>();
  let list = '';
  for (const [index, { to, entry }] of files.entries()) {
    progress?.((index + 1) / files.length);
    if (signal?.aborted) return fail({ code: 'contract/cancelled', facts: {} });
    const path = pathInside(staged, to);
    if (path === null) {
      return fail({ code: 'store/zip-unsafe', facts: { name, entry: entry.path, why: 'path' } });
    }
    try {
      if (to === checksumsName) {
        list = await textOf(unpacked(reader, entry));
        continue;
      }
      await ensureFolders(staged, dirname(to), fs);
      const hash = createHash('sha256');
      await writeDurably(path, hashed(unpacked(reader, entry), hash), fs);
      sums.set(to, hash.digest('hex'));
    } catch (error) {
      if (error instanceof DamagedEntry) return damaged(entry.path);
      throw error;
    }
    if (basename(to) === sourceName) await fs.setReadOnly(path, true);
  }
  const listed = readChecksums(list);
  for (const [path, sum] of listed) if (sums.get(path) !== sum) return damaged(path);
  await syncTree(staged, fs);
  return ok({ files: sums.size, checked: listed.size });
}

async function ensureFolders(root: string, folder: string, fs: FileSystem): Promise<void> {
  if (folder === '.') return;
  await ensureFolders(root, dirname(folder), fs);
  await ensureFolder(join(root, folder), fs);
}

async function syncTree(folder: string, fs: FileSystem): Promise<void> {
  for (const { name, kind } of await fs.list(folder)) {
    if (kind === 'folder') await syncTree(join(folder, name), fs);
  }
  await fs.syncFolder(folder);
}

class DamagedEntry extends Error {}

/** The parts as they come, counted into a hash on their way. */
export async function* hashed(
  parts: AsyncIterable<Uint8Array>,
  hash: { update(part: Uint8Array): unknown },
): AsyncGenerator<Uint8Array> {
  for await (const part of parts) {
    hash.update(part);
    yield part;
  }
}

async function textOf(parts: AsyncIterable<Uint8Array>): Promise<string> {
  const found: Uint8Array[] = [];
  for await (const part of parts) found.push(part);
  return Buffer.concat(found).toString('utf8');
}

/** Content of an entry, never more than its directory promised, with its checksum held at the end. */
async function* unpacked(reader: Reader, entry: ZipEntry): AsyncGenerator<Uint8Array> {
  let size = 0;
  let crc = 0;
  const found: Uint8Array[] = [];
  const inflate = new Inflate((part) => {
    found.push(part);
  });
  const take = (part: Uint8Array) => {
    size += part.length;
    if (size > entry.size) throw new DamagedEntry();
    crc = crc32(part, crc);
    return part;
  };
  for (let at = 0; at < entry.packed; ) {
    const part = new Uint8Array(Math.min(partLength, entry.packed - at));
    const length = await reader.read(part, entry.start + at);
    if (length === 0) throw new DamagedEntry();
    at += length;
    const packed = part.subarray(0, length);
    if (!entry.isDeflated) {
      yield take(packed);
      continue;
    }
    try {
      inflate.push(packed, at === entry.packed);
    } catch {
      throw new DamagedEntry();
    }
    for (const piece of found.splice(0)) yield take(piece);
  }
  if (size !== entry.size || crc >>> 0 !== entry.crc) throw new DamagedEntry();
}

/** Gives an unpacked session its name, numbered where that is taken; returns its folder. */
async function settleDown(
  staged: string,
  parent: string,
  title: string,
  fs: FileSystem,
): Promise<Result<string>> {
  const name = safeFolderName(title);
  for (let n = 1; n <= mostOfOneName; n++) {
    const folder = pathInside(parent, numberedName(name, n));
    if (folder === null) break;
    if ((await fs.stat(folder)) !== null) continue;
    try {
      await fs.rename(staged, folder);
    } catch (error) {
      // Somebody else made the same name a moment ago.
      if (isNameTaken(error)) continue;
      throw error;
    }
    await fs.syncFolder(parent);
    return ok(folder);
  }
  return fail({ code: 'store/already-there', facts: { path: join(parent, name) } });
}
