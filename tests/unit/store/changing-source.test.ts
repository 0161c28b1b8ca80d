import { appendFile, readdir, readFile, rename, rm, truncate, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { unwrap } from '../../../core/result/index.ts';
import { metricUnits } from '../../../core/units/index.ts';
import { createShow, problemText } from '../../../core/words/index.ts';
import {
  closeSession,
  diskError,
  type FileSystem,
  importLog,
  nodeFileSystem,
  openSession,
  type Reader,
} from '../../../electron/store/index.ts';
import { moment, newSessionFolder, scratchFolder } from '../../support/store-session.ts';

/** Larger than what is copied at once. */
const bytes = new Uint8Array(3_000_000).fill(49);

/** A log in a folder of its own, and a disk on which something happens to it once its first part was read. */
async function logOn(happens: (path: string) => Promise<void>) {
  const path = join(await scratchFolder(), 'pull.csv');
  await writeFile(path, bytes);
  let isDone = false;
  const meddled = (reader: Reader): Reader => ({
    ...reader,
    read: async (into, position) => {
      if (isDone) return reader.read(into, position);
      const length = await reader.read(into, position);
      isDone = true;
      await happens(path);
      return length;
    },
  });
  const fs: FileSystem = {
    ...nodeFileSystem,
    openRead: async (at, how) => {
      const reader = await nodeFileSystem.openRead(at, how);
      return at === path ? meddled(reader) : reader;
    },
  };
  const folder = await newSessionFolder();
  const session = unwrap(await openSession(folder, { now: moment(1), fs }));
  onTestFinished(async () => void (await closeSession(session)));
  const runs = () => readdir(join(folder, 'runs'));
  return { path, session, runs, take: () => importLog(session, { path }, {}, moment(2)) };
}

describe('a log that changes while it is copied', () => {
  it.each<[string, (path: string) => Promise<void>]>([
    ['grows', (path) => appendFile(path, '1')],
    ['is cut short', (path) => truncate(path, 1_500_000)],
    ['is emptied', (path) => truncate(path, 0)],
    [
      'is written anew, as long as before',
      (path) =>
        writeFile(
          path,
          bytes.map(() => 50),
        ),
    ],
  ])(
    '%s: nothing of it is kept, the file is told with what to do, and the next try takes it',
    async (_, happens) => {
      const { path, session, runs, take } = await logOn(happens);
      const before = await runs();
      const taken = await take();
      expect(taken).toMatchObject({
        problems: [{ code: 'store/source-changing', facts: { name: 'pull.csv' } }],
      });
      for (const language of ['en', 'de'] as const) {
        const said = taken.ok ? null : problemText(taken.problems[0], createShow(language, metricUnits));
        expect(said?.message).toContain('pull.csv');
        expect(said?.remedy).not.toBe('');
      }
      expect(await runs()).toEqual(before);
      expect(session.runs.size).toBe(before.length);
      // The logger's own file is as the logger left it.
      const left = await readFile(path);
      if (left.length === 0) return;
      const again = unwrap(await take());
      expect(again.record.size_bytes).toBe(left.length);
      expect(await readFile(join(session.folder, 'runs', again.record.id, 'source.csv'))).toEqual(left);
    },
  );

  it.each<[string, (path: string) => Promise<void>]>([
    ['is removed', (path) => rm(path)],
    [
      'makes room for another of its name',
      async (path) => {
        await writeFile(`${path}.new`, 'another');
        await rename(`${path}.new`, path);
      },
    ],
  ])('%s: what was opened is taken whole', async (_, happens) => {
    const { session, take } = await logOn(happens);
    const { record } = unwrap(await take());
    expect(new Uint8Array(await readFile(join(session.folder, 'runs', record.id, 'source.csv')))).toEqual(
      bytes,
    );
  });

  it('can not be read on: the log is told, nothing is kept, and the next try takes it', async () => {
    let isBroken = true;
    const { path, runs, take } = await logOn(async (at) => {
      if (isBroken) throw diskError('EIO', at);
    });
    const before = await runs();
    expect(await take()).toMatchObject({
      problems: [{ code: 'store/source-unreadable', facts: { path, code: 'EIO' } }],
    });
    expect(await runs()).toEqual(before);
    isBroken = false;
    expect(unwrap(await take()).record.size_bytes).toBe(bytes.length);
    expect(new Uint8Array(await readFile(path))).toEqual(bytes);
  });
});

it('a session whose disk is full is told by its own folder, not by the log that fits nowhere', async () => {
  const path = join(await scratchFolder(), 'pull.csv');
  await writeFile(path, bytes);
  const folder = await newSessionFolder();
  let isFull = false;
  const fs: FileSystem = {
    ...nodeFileSystem,
    createNew: async (at) => {
      if (isFull) throw diskError('ENOSPC', at);
      return nodeFileSystem.createNew(at);
    },
  };
  const session = unwrap(await openSession(folder, { now: moment(1), fs }));
  onTestFinished(async () => void (await closeSession(session)));
  isFull = true;
  expect(await importLog(session, { path }, {}, moment(2))).toMatchObject({
    problems: [{ code: 'store/disk-full', facts: { path: folder } }],
  });
});

it('a log that is not there is told by its path', async () => {
  const folder = await newSessionFolder();
  const session = unwrap(await openSession(folder, { now: moment(1) }));
  onTestFinished(async () => void (await closeSession(session)));
  const path = join(folder, 'nothing.csv');
  expect(await importLog(session, { path }, {}, moment(2))).toMatchObject({
    problems: [{ code: 'store/missing', facts: { path } }],
  });
});
