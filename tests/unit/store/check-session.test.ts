import { readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { unwrap } from '../../../core/result/index.ts';
import {
  type ChannelCache,
  checkSession,
  closeSession,
  importLog,
  openSession,
  readChannelCache,
  repairSession,
  saveRun,
  saveSession,
  unpackNumbers,
  writeChannelCache,
} from '../../../electron/store/index.ts';
import { contentsOf, editFile, flipBit } from '../../support/folder-contents.ts';
import { moment, newSessionFolder, opened, sampleLog } from '../../support/store-session.ts';

const cache: ChannelCache = {
  key: 'reader 1',
  header: { columns: ['Time (s)', 'Speed'] },
  arrays: [Float64Array.of(0, 0.05, Number.NaN), Uint8Array.of(0, 0, 1), new Float64Array(0)],
};

/** Two runs with a cache each, an entry that holds both, two versions of everything. */
async function filledFolder() {
  const folder = await newSessionFolder();
  const open = await opened(folder);
  const ids: string[] = [];
  for (const n of [1, 2]) {
    const { record } = unwrap(
      await importLog(open, { name: `pull ${n}.csv`, content: sampleLog(n) }, {}, moment(n)),
    );
    unwrap(await saveRun(open, { ...record, note: 'dry' }, moment(n + 2)));
    unwrap(await writeChannelCache(open, record.id, cache));
    ids.push(record.id);
  }
  const [baseline] = open.session.ledger;
  if (!baseline) throw new Error('a session starts with its baseline');
  const runs = ids.map((runId) => ({ runId, from_s: null, to_s: null }));
  unwrap(await saveSession(open, { ...open.session, ledger: [{ ...baseline, runs }] }, moment(5)));
  await closeSession(open);
  return { folder, ids, runPath: (i: number, name: string) => join(folder, 'runs', ids[i] ?? '', name) };
}

const damageOf = async (folder: string) =>
  unwrap(await checkSession(folder)).damage.map((note) => [note.code, note.facts]);

describe('checking', () => {
  it('a sound session has no findings, and every file was read', async () => {
    const { folder } = await filledFolder();
    const before = await contentsOf(folder);
    const shares: number[] = [];
    const report = unwrap(await checkSession(folder, { progress: (share) => shares.push(share) }));
    expect(report).toMatchObject({ isSound: true, runs: 2, damage: [], remarks: [] });
    expect(report.filesChecked).toBe(Object.keys(before).length);
    expect(shares).toEqual([0.5, 1]);
    expect(await contentsOf(folder)).toEqual(before);
  });

  it('a flipped bit in any file is found and named, and nothing else is', async () => {
    const { folder } = await filledFolder();
    const files = Object.keys(await contentsOf(folder));
    expect(files.length).toBeGreaterThan(10);
    for (const file of files) {
      const path = join(folder, file);
      const good = await readFile(path);
      await flipBit(path, Math.floor(good.length / 2), good.length % 8);
      const { damage, remarks, isSound } = unwrap(await checkSession(folder));
      const named = [...damage, ...remarks].map((note) => (note.facts as { file: string }).file);
      // A version that is damaged is no second copy of its document any more.
      expect(named).toContain(file);
      expect(damage.length + remarks.filter((r) => r.code === 'store/cache-unusable').length).toBe(1);
      expect(isSound).toBe(file.endsWith('channels.bin'));
      await writeFile(path, good);
    }
    expect(unwrap(await checkSession(folder)).isSound).toBe(true);
  });

  it('a missing log, record and run are found', async () => {
    const { folder, ids, runPath } = await filledFolder();
    await rm(runPath(0, 'source.csv'), { force: true });
    await rm(runPath(1, '.'), { recursive: true });
    expect(await damageOf(folder)).toEqual([
      ['store/file-missing', { file: `runs/${ids[0]}/source.csv`, repair: 'import-again' }],
      ['store/file-missing', { file: `runs/${ids[1]}`, repair: 'import-again' }],
    ]);
  });

  it('an edit by hand and a stranger’s file are remarks, no damage', async () => {
    const { folder, ids, runPath } = await filledFolder();
    await editFile(runPath(0, 'run.json'), (text) => text.replace('dry', 'damp and cold'));
    await writeFile(join(folder, 'photo.jpg'), 'x');
    await writeFile(runPath(1, 'readme.txt'), 'x');
    await writeFile(join(folder, '.unfinished-0123456789ab-session.json'), '{');
    const report = unwrap(await checkSession(folder));
    expect(report.isSound).toBe(true);
    expect(report.remarks).toEqual([
      { code: 'store/unfinished-found', facts: { file: '.unfinished-0123456789ab-session.json' } },
      { code: 'store/unknown-file', facts: { file: 'photo.jpg' } },
      ...[
        { code: 'store/changed-outside', facts: { file: `runs/${ids[0]}/run.json`, fields: ['note'] } },
        { code: 'store/no-second-copy', facts: { file: `runs/${ids[0]}/run.json` } },
      ],
      { code: 'store/unknown-file', facts: { file: `runs/${ids[1]}/readme.txt` } },
    ]);
  });
});

describe('repairing', () => {
  it('puts back from history, sets aside what cannot be, and leaves the rest as it was', async () => {
    const { folder, ids, runPath } = await filledFolder();
    const before = await contentsOf(folder);
    const [version = ''] = await readdir(join(folder, 'history'));
    await flipBit(join(folder, 'session.json'), 50);
    await flipBit(join(folder, 'history', version), 50);
    await flipBit(runPath(0, 'run.json'), 50);
    await flipBit(runPath(1, 'source.csv'), 50);
    await flipBit(runPath(1, 'channels.bin'), 50);
    const { done, after } = unwrap(await repairSession(folder, { now: moment(9) }));
    expect(done.map((note) => [note.code, (note.facts as { file: string }).file])).toEqual([
      ['store/restored', 'session.json'],
      ['store/restored', `runs/${ids[0]}/run.json`],
      ['store/set-aside', `history/${version}`],
      ['store/set-aside', `runs/${ids[1]}/source.csv`],
    ]);
    expect(after.damage).toEqual([
      { code: 'store/file-missing', facts: { file: `runs/${ids[1]}/source.csv`, repair: 'import-again' } },
    ]);
    expect(await readdir(join(folder, 'set-aside'))).toHaveLength(4);

    const open = await opened(folder, 10);
    unwrap(await importLog(open, { name: 'again.csv', content: sampleLog(2) }, {}, moment(11)));
    await closeSession(open);
    expect(unwrap(await checkSession(folder)).isSound).toBe(true);
    await rm(join(folder, 'set-aside'), { recursive: true });
    delete before[`history/${version}`];
    delete before[`runs/${ids[1]}/channels.bin`];
    expect(await contentsOf(folder)).toEqual(before);
  });

  it('is refused while another program has the session', async () => {
    const { folder } = await filledFolder();
    const other = unwrap(await openSession(folder, { now: moment(6) }));
    const refused = await repairSession(folder, { now: moment(7) });
    expect(refused.ok ? '' : refused.problems[0].code).toBe('store/locked');
    await closeSession(other);
  });
});

describe('the cache', () => {
  it('comes back as it was, gaps and all, also from the middle of a shared buffer', async () => {
    const { folder, ids } = await filledFolder();
    const open = await opened(folder);
    expect(await readChannelCache(open, ids[0] ?? '', 'reader 1')).toEqual(cache);
    const large = { ...cache, arrays: [Float64Array.from({ length: 50_000 }, (_, i) => i / 7)] };
    unwrap(await writeChannelCache(open, ids[0] ?? '', large));
    expect(await readChannelCache(open, ids[0] ?? '', 'reader 1')).toEqual(large);
    await closeSession(open);
  });

  it('keeps long numbers of which few differ in a quarter of the bytes, to the last bit', async () => {
    const { folder, ids, runPath } = await filledFolder();
    const open = await opened(folder);
    const few = [0, -0, Number.NaN, 1e-300, Number.POSITIVE_INFINITY, 0.1, 0.30000000000000004, -7];
    const numbers = Float64Array.from({ length: 200_000 }, (_, i) => few[(i * i) % 8] as number);
    const rising = Float64Array.from({ length: 200_000 }, (_, i) => (i % 60_000) / 3);
    const many = Float64Array.from({ length: 200_000 }, (_, i) => i / 3);
    const given = { ...cache, arrays: [numbers, new Uint8Array(3), rising, many] };
    unwrap(await writeChannelCache(open, ids[0] ?? '', given));
    expect((await readFile(runPath(0, 'channels.bin'))).length).toBeLessThan(8 * 200_000 * 1.9);
    const found = await readChannelCache(open, ids[0] ?? '', 'reader 1');
    const back = found?.arrays.map((a) => ('table' in a ? unpackNumbers(a) : a)) ?? [];
    expect(
      back.map((a) =>
        Buffer.from(a.buffer, a.byteOffset, a.byteLength).equals(
          Buffer.from(given.arrays[back.indexOf(a)]?.buffer as ArrayBuffer),
        ),
      ),
    ).toEqual([true, true, true, true]);
    expect(found?.arrays.map((a) => 'table' in a)).toEqual([true, false, true, false]);
    await closeSession(open);
  });

  it('made by another reader, damaged or cut off it is not used', async () => {
    const { folder, ids, runPath } = await filledFolder();
    const open = await opened(folder);
    const read = () => readChannelCache(open, ids[1] ?? '', 'reader 1');
    expect(await readChannelCache(open, ids[1] ?? '', 'reader 2')).toBeNull();
    const path = runPath(1, 'channels.bin');
    const good = await readFile(path);
    for (let at = 0; at < good.length; at += 7) {
      await flipBit(path, at);
      expect(await read()).toBeNull();
      await writeFile(path, good.subarray(0, at));
      expect(await read()).toBeNull();
      await writeFile(path, good);
    }
    expect(await read()).toEqual(cache);
    await rm(path);
    expect(await read()).toBeNull();
    await closeSession(open);
  });
});
