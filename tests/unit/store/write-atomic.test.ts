import { chmod, mkdir, mkdtemp, readdir, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import {
  diskError,
  type FileSystem,
  nodeFileSystem,
  sha256,
  sha256OfFile,
  writeAtomic,
} from '../../../electron/store/index.ts';

const folder = await mkdtemp(join(tmpdir(), 'atomic-'));
afterAll(() => rm(folder, { recursive: true }));

describe('writing in one step', () => {
  it('creates, then replaces, and leaves nothing else behind', async () => {
    const path = join(folder, 'session.json');
    expect(await writeAtomic(path, 'first')).toEqual({ ok: true, value: undefined });
    expect(await writeAtomic(path, Uint8Array.of(1, 2, 3))).toEqual({ ok: true, value: undefined });
    expect([...(await readFile(path))]).toEqual([1, 2, 3]);
    expect(await readdir(folder)).toEqual(['session.json']);
  });

  it('content is on the disk before the name points at it, and the name before anyone is told', async () => {
    const steps: string[] = [];
    const step = <T>(name: string, action: Promise<T>): Promise<T> => {
      steps.push(name);
      return action;
    };
    const watched: FileSystem = {
      ...nodeFileSystem,
      async createNew(path) {
        const writer = await step('create', nodeFileSystem.createNew(path));
        return {
          write: (bytes) => step('write', writer.write(bytes)),
          sync: () => step('sync', writer.sync()),
          close: () => step('close', writer.close()),
        };
      },
      rename: (from, to) => step('rename', nodeFileSystem.rename(from, to)),
      syncFolder: (path) => step('sync folder', nodeFileSystem.syncFolder(path)),
    };
    await writeAtomic(join(folder, 'order'), 'x', watched);
    expect(steps).toEqual(['create', 'write', 'sync', 'close', 'rename', 'sync folder']);
  });

  it.each([
    ['ENOSPC', 'store/disk-full'],
    ['EIO', 'store/folder-gone'],
    ['EROFS', 'store/disk-read-only'],
    ['EMFILE', 'store/disk-error'],
  ])(
    '%s while flushing is told as %s; the old content stands and the leavings are gone',
    async (code, expected) => {
      const path = join(folder, 'kept');
      await writeAtomic(path, 'old');
      const before = await readdir(folder);
      const failing: FileSystem = {
        ...nodeFileSystem,
        async createNew(to) {
          const writer = await nodeFileSystem.createNew(to);
          return { ...writer, sync: () => Promise.reject(diskError(code, to)) };
        },
      };
      const result = await writeAtomic(path, 'new', failing);
      expect(result.ok ? '' : result.problems[0].code).toBe(expected);
      expect(await readFile(path, 'utf8')).toBe('old');
      expect(await readdir(folder)).toEqual(before);
    },
  );

  it('a mistake of our own is thrown, not told as the disk’s', async () => {
    const broken: FileSystem = { ...nodeFileSystem, rename: () => Promise.reject(new TypeError('ours')) };
    await expect(writeAtomic(join(folder, 'x'), 'x', broken)).rejects.toThrow('ours');
  });

  it('a folder that is not there is told, and not the file that was to stand in it', async () => {
    const result = await writeAtomic(join(folder, 'none', 'x'), 'x');
    expect(result).toMatchObject({
      problems: [{ code: 'store/no-folder', facts: { path: join(folder, 'none') } }],
    });
  });
});

describe('reading', () => {
  it('refuses links, folders and pipes where a plain file belongs', async () => {
    await writeFile(join(folder, 'real'), 'secret');
    await symlink(join(folder, 'real'), join(folder, 'link'));
    await mkdir(join(folder, 'sub'));
    await expect(nodeFileSystem.readFile(join(folder, 'link'), 100)).rejects.toMatchObject({ code: 'ELOOP' });
    await expect(nodeFileSystem.readFile(join(folder, 'sub'), 100)).rejects.toMatchObject({ code: 'EISDIR' });
    const followed = await nodeFileSystem.openRead(join(folder, 'link'), { followLinks: true });
    await followed.close();
  });

  it('refuses what is far too long', async () => {
    await writeFile(join(folder, 'long'), 'x'.repeat(101));
    await expect(nodeFileSystem.readFile(join(folder, 'long'), 100)).rejects.toMatchObject({ code: 'EFBIG' });
  });

  it('hashes a file in parts as it would at once', async () => {
    const content = Buffer.alloc(700_001, 'speed;rpm\n');
    await writeFile(join(folder, 'large'), content);
    expect(await sha256OfFile(join(folder, 'large'), nodeFileSystem)).toEqual({
      sha256: sha256(content),
      size: 700_001,
    });
  });

  // FIPS 180-4, example "abc" (NIST, Cryptographic Standards: example values).
  it('agrees with the published example', () => {
    expect(sha256('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  });

  it('a read-only file is read but not written', async () => {
    await writeFile(join(folder, 'log'), 'x');
    await nodeFileSystem.setReadOnly(join(folder, 'log'), true);
    expect(await readFile(join(folder, 'log'), 'utf8')).toBe('x');
    await chmod(join(folder, 'log'), 0o644);
  });
});
