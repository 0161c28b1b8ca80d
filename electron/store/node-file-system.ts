import {
  closeSync,
  constants,
  type Dirent,
  fstatSync,
  lstatSync,
  openSync,
  readSync,
  type Stats,
} from 'node:fs';
import { chmod, lstat, mkdir, open, readdir, rename, rmdir, unlink } from 'node:fs/promises';
import { diskError, type EntryKind, errorCode, type FileSystem } from './file-system.ts';

const isWindows = process.platform === 'win32';
/** Zero where the system has no such flag. */
const noFollow = constants.O_NOFOLLOW ?? 0;
/** Opening a pipe that nobody writes to would wait for ever. */
const noWait = constants.O_NONBLOCK ?? 0;

function kindOf(found: Dirent | Stats): EntryKind {
  if (found.isFile()) return 'file';
  return found.isDirectory() ? 'folder' : 'other';
}

/** A device or a pipe is refused as a link is: what it leads to is no file of the session's own. */
const notAFile = (found: Stats, path: string) => diskError(found.isDirectory() ? 'EISDIR' : 'ELOOP', path);

async function openPlain(path: string, followLinks: boolean) {
  const handle = await open(path, constants.O_RDONLY | noWait | (followLinks ? 0 : noFollow));
  try {
    const stats = await handle.stat();
    if (!stats.isFile()) throw notAFile(stats, path);
    return { handle, size: stats.size };
  } catch (error) {
    await handle.close();
    throw error;
  }
}

/** Files up to this length are worth reading in one go. */
const smallFile = 1 << 20;
/** A disk that takes longer than this, time after time, is far away, and nothing should wait for it. */
const near_ms = 50;
const slowInARow = 3;
const wary_ms = 10_000;
let waryUntil_ms = 0;
let slowOnes = 0;

/**
 * Small files on a near disk are read and looked at directly, which takes a quarter of the time of going through
 * the thread pool: a session of 500 runs opens in that. After some slow answers in a row (a share, a failing
 * drive) everything goes through the pool for a while, so that the program stays responsive.
 */
function directly<T>(action: () => T): T {
  const from = performance.now();
  try {
    return action();
  } finally {
    const now = performance.now();
    slowOnes = now - from > near_ms ? slowOnes + 1 : 0;
    if (slowOnes >= slowInARow) waryUntil_ms = now + wary_ms;
  }
}

/** Undefined where the file is too long for it. */
function readSmall(path: string, limit: number): Uint8Array | undefined {
  const file = openSync(path, constants.O_RDONLY | noWait | noFollow);
  try {
    const stats = fstatSync(file);
    if (!stats.isFile()) throw notAFile(stats, path);
    if (stats.size > limit) throw diskError('EFBIG', path);
    if (stats.size > smallFile) return undefined;
    const bytes = Buffer.allocUnsafe(stats.size);
    let length = 0;
    for (let read = -1; read !== 0 && length < bytes.length; length += read) {
      read = readSync(file, bytes, length, bytes.length - length, length);
    }
    return bytes.subarray(0, length);
  } finally {
    closeSync(file);
  }
}

/** Virus scanners and indexers on Windows hold fresh files open for some milliseconds. */
async function withPatience(action: () => Promise<void>): Promise<void> {
  for (let wait_ms = 10; ; wait_ms *= 2) {
    try {
      return await action();
    } catch (error) {
      const isHeld = isWindows && ['EPERM', 'EACCES', 'EBUSY'].includes(errorCode(error) ?? '');
      if (!isHeld || wait_ms > 1000) throw error;
      await new Promise((resolve) => setTimeout(resolve, wait_ms));
    }
  }
}

/** The disk of this machine. */
export const nodeFileSystem: FileSystem = {
  async openRead(path, options) {
    const { handle } = await openPlain(path, options?.followLinks ?? false);
    return {
      read: async (into, position) => (await handle.read(into, 0, into.length, position ?? null)).bytesRead,
      async state() {
        const stats = await handle.stat();
        return { size: stats.size, modified_ms: stats.mtimeMs };
      },
      close: () => handle.close(),
    };
  },
  async readFile(path, limit) {
    if (performance.now() >= waryUntil_ms) {
      const bytes = directly(() => readSmall(path, limit));
      if (bytes) return bytes;
    }
    const { handle, size } = await openPlain(path, false);
    try {
      if (size > limit) throw diskError('EFBIG', path);
      return await handle.readFile();
    } finally {
      await handle.close();
    }
  },
  async createNew(path) {
    const handle = await open(path, 'wx', 0o666);
    return {
      // Node's own writeFile on a handle repeats short writes until all is out.
      write: (bytes) => handle.writeFile(bytes),
      sync: () => handle.sync(),
      close: () => handle.close(),
    };
  },
  rename: (from, to) => withPatience(() => rename(from, to)),
  makeFolder: async (path) => {
    await mkdir(path);
  },
  removeFile: (path) => withPatience(() => unlink(path)),
  removeFolder: (path) => withPatience(() => rmdir(path)),
  async list(folder) {
    const found = await readdir(folder, { withFileTypes: true });
    return found
      .map((entry) => ({ name: entry.name, kind: kindOf(entry) }))
      .sort((a, b) => (a.name < b.name ? -1 : 1));
  },
  async stat(path) {
    try {
      const isNear = performance.now() >= waryUntil_ms;
      const stats = isNear ? directly(() => lstatSync(path, { throwIfNoEntry: false })) : await lstat(path);
      return stats ? { kind: kindOf(stats), size: stats.size, modified_ms: stats.mtimeMs } : null;
    } catch (error) {
      if (errorCode(error) === 'ENOENT' || errorCode(error) === 'ENOTDIR') return null;
      throw error;
    }
  },
  async syncFolder(folder) {
    // Windows cannot open a folder for this; NTFS journals renames itself.
    if (isWindows) return;
    const handle = await open(folder, 'r');
    try {
      await handle.sync();
    } catch (error) {
      // Some network shares cannot flush a folder and say so; there is nothing more to ask of them.
      if (!['EINVAL', 'ENOTSUP', 'EOPNOTSUPP'].includes(errorCode(error) ?? '')) throw error;
    } finally {
      await handle.close();
    }
  },
  async touch(path) {
    const handle = await open(path, constants.O_RDWR | noFollow);
    try {
      // Writing a byte as it stands makes the file's server set the date, not this machine's clock.
      const first = Buffer.alloc(1);
      const { bytesRead } = await handle.read(first, 0, 1, 0);
      if (bytesRead === 1) await handle.write(first, 0, 1, 0);
    } finally {
      await handle.close();
    }
  },
  setReadOnly: (path, readOnly) => chmod(path, readOnly ? 0o444 : 0o644),
};
