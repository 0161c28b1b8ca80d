import { mkdir, readdir, readFile, rm, stat, symlink, utimes, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { type Zippable, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { unwrap } from '../../../core/result/index.ts';
import { metricUnits } from '../../../core/units/index.ts';
import { createShow, problemText } from '../../../core/words/index.ts';
import {
  checkSession,
  closeSession,
  type FileSystem,
  importLog,
  nodeFileSystem,
  saveRun,
  sha256,
  unzipSession,
  zipSession,
} from '../../../electron/store/index.ts';
import { contentsOf } from '../../support/folder-contents.ts';
import { moment, newSessionFolder, opened, sampleLog, scratchFolder } from '../../support/store-session.ts';

async function filledFolder(name = 'Überholt 🏁'): Promise<string> {
  const folder = await newSessionFolder(name);
  const open = await opened(folder);
  for (const n of [1, 2, 3]) {
    const { record } = unwrap(
      await importLog(open, { name: `${n}.csv`, content: sampleLog(n) }, {}, moment(n)),
    );
    unwrap(await saveRun(open, { ...record, note: 'dry' }, moment(n + 3)));
  }
  await closeSession(open);
  return folder;
}

async function zipped(folder: string): Promise<string> {
  const target = join(await scratchFolder(), 'moved.zip');
  unwrap(await zipSession(folder, target, { now: moment(9) }));
  return target;
}

/** A zip by hand, with what no honest program would put in. */
async function crafted(files: Zippable, change: (bytes: Uint8Array) => void = () => undefined) {
  const path = join(await scratchFolder(), 'crafted.zip');
  const bytes = zipSync(files);
  change(bytes);
  await writeFile(path, bytes);
  return path;
}

const text = (content: string) => new TextEncoder().encode(content);

async function refusal(zip: string) {
  const parent = await scratchFolder();
  const result = await unzipSession(zip, parent);
  expect(await readdir(parent)).toEqual([]);
  return result.ok ? null : result.problems[0];
}

describe('moving a session as a zip', () => {
  it('a folder to write into that is not there is told, and a zip that is not there is told as itself', async () => {
    const folder = await filledFolder();
    const zip = await zipped(folder);
    const away = join(await scratchFolder(), 'away');
    const noFolder = { problems: [{ code: 'store/no-folder', facts: { path: away } }] };
    expect(await zipSession(folder, join(away, 'a.zip'), { now: moment(9) })).toMatchObject(noFolder);
    expect(await unzipSession(zip, away)).toMatchObject(noFolder);
    const nothing = join(dirname(zip), 'nothing.zip');
    expect(await unzipSession(nothing, dirname(zip))).toMatchObject({
      problems: [{ code: 'store/missing', facts: { path: nothing } }],
    });
  });

  it('comes out byte for byte as it went in, sound, with its logs read-only', async () => {
    const folder = await filledFolder();
    const zip = await zipped(folder);
    const parent = await scratchFolder();
    const shares: number[] = [];
    const there = unwrap(await unzipSession(zip, parent, { progress: (share) => shares.push(share) })).folder;
    expect(there).toBe(join(parent, basename(folder)));
    expect(await contentsOf(there)).toEqual(await contentsOf(folder));
    expect(unwrap(await checkSession(there))).toMatchObject({ isSound: true, remarks: [], runs: 3 });
    expect(shares.at(-1)).toBe(1);
    const [run = ''] = await readdir(join(there, 'runs'));
    expect((await stat(join(there, 'runs', run, 'source.csv'))).mode & 0o222).toBe(0);
    const again = unwrap(await unzipSession(zip, parent)).folder;
    expect(basename(again)).toBe(`${basename(folder)} (2)`);
  });

  it('leaves out caches, locks and links, and the zip itself when it lies in the folder', async () => {
    const folder = await filledFolder();
    const before = await contentsOf(folder);
    await symlink('/etc/passwd', join(folder, 'passwords'));
    await writeFile(
      join(folder, 'runs', (await readdir(join(folder, 'runs')))[0] ?? '', 'channels.bin'),
      'x',
    );
    const open = await opened(folder);
    const target = join(folder, 'mine.zip');
    unwrap(await zipSession(folder, target, { now: moment(9) }));
    await closeSession(open);
    const there = unwrap(await unzipSession(target, await scratchFolder())).folder;
    expect(await contentsOf(there)).toEqual(before);
  });

  it('is refused where any byte of it is damaged, and nothing stays', async () => {
    const zip = await zipped(await newSessionFolder());
    const good = await readFile(zip);
    const parent = await scratchFolder();
    const original = unwrap(await unzipSession(zip, parent)).folder;
    const expected = await contentsOf(original);
    await rm(original, { recursive: true });
    let refused = 0;
    for (let at = 0; at < good.length; at += 29) {
      const bad = Buffer.from(good);
      bad[at] = (bad[at] ?? 0) ^ (1 << (at % 8));
      await writeFile(zip, bad);
      const result = await unzipSession(zip, parent);
      if (result.ok) {
        // Dates and other bytes that carry no content may differ.
        expect(await contentsOf(result.value.folder)).toEqual(expected);
        await rm(result.value.folder, { recursive: true });
      } else refused++;
      expect(await readdir(parent)).toEqual([]);
    }
    expect(refused).toBeGreaterThan(20);
    for (const length of [0, 10, 100, good.length - 1]) {
      await writeFile(zip, good.subarray(0, length));
      expect((await refusal(zip))?.code).toBe('store/not-a-zip');
    }
  });

  it('can be cancelled, and then leaves nothing', async () => {
    const folder = await filledFolder();
    const zip = await zipped(folder);
    const signal = { aborted: true };
    const target = join(await scratchFolder(), 'x.zip');
    const out = await zipSession(folder, target, { now: moment(9), signal });
    expect(out.ok ? '' : out.problems[0].code).toBe('contract/cancelled');
    expect(await readdir(dirname(target))).toEqual([]);
    const parent = await scratchFolder();
    const back = await unzipSession(zip, parent, { signal });
    expect(back.ok ? '' : back.problems[0].code).toBe('contract/cancelled');
    expect(await readdir(parent)).toEqual([]);
  });

  it('clears away what an interrupted one left long ago, and leaves alone what may be in work', async () => {
    const zip = await zipped(await filledFolder());
    const stick = await scratchFolder();
    const [old, fresh] = ['.unfinished-0123456789ab-moved.zip', '.unfinished-ba9876543210-moved.zip'];
    for (const name of [old, fresh]) await writeFile(join(stick, name), 'half');
    await utimes(join(stick, old), new Date(), new Date(Date.now() - 25 * 3_600_000));
    const there = unwrap(await unzipSession(zip, stick)).folder;
    expect((await readdir(stick)).sort()).toEqual([fresh, basename(there)].sort());
  });

  it.each([
    ['a log of 5 GB', { size: 5 * 2 ** 30, files: 0 }],
    ['65,000 files more', { size: 0, files: 65_000 }],
  ])('that the format can not hold (%s) is refused before anything is written', async (_, giant) => {
    const folder = await filledFolder();
    const { list, stat: plainStat } = nodeFileSystem;
    const fs: FileSystem = {
      ...nodeFileSystem,
      stat: async (path) => {
        const state = await plainStat(path);
        return state && path.endsWith('source.csv') ? { ...state, size: state.size + giant.size } : state;
      },
      list: async (at) => {
        const entries = await list(at);
        if (basename(at) !== 'handover') return entries;
        return Array.from({ length: giant.files }, (__, n) => ({ name: `${n}.html`, kind: 'file' as const }));
      },
    };
    await mkdir(join(folder, 'handover'), { recursive: true });
    const target = join(await scratchFolder(), 'x.zip');
    const result = await zipSession(folder, target, { now: moment(9), fs });
    expect(result.ok ? '' : result.problems[0].code).toBe('store/zip-too-large');
    expect(await readdir(dirname(target))).toEqual([]);
  });

  it('tells its own SHA-256, and how many files were held against the sums inside', async () => {
    const folder = await filledFolder();
    const target = join(await scratchFolder(), 'x.zip');
    const zip = unwrap(await zipSession(folder, target, { now: moment(9) }));
    expect(zip.sha256).toBe(sha256(await readFile(target)));
    const back = unwrap(await unzipSession(target, await scratchFolder()));
    expect([back.files, back.checked]).toEqual([zip.files, zip.files]);
    const strange = unwrap(
      await unzipSession(
        await crafted({ 's/session.json': await readFile(join(folder, 'session.json')) }),
        await scratchFolder(),
      ),
    );
    expect([strange.files, strange.checked]).toEqual([1, 0]);
  });

  it('of a folder that is no session is refused', async () => {
    const folder = await scratchFolder();
    const result = await zipSession(folder, join(folder, 'x.zip'), { now: moment(9) });
    expect(result.ok ? '' : result.problems[0].code).toBe('store/not-a-session');
  });
});

describe('a zip from a stranger', () => {
  const session = text('{}');
  it.each([
    ['../evil'],
    ['s/../../evil'],
    ['/etc/cron.d/evil'],
    ['s\\..\\evil'],
    ['C:/evil'],
    ['s/con'],
    ['s/trailing.'],
    ['s//twice'],
    ['s/./here'],
    ['s/line\nbreak'],
    ['s/a/b/c/d/e/f/g/h/deep'],
  ])('with the path %j is refused as a whole', async (path) => {
    const zip = await crafted({ 's/session.json': session, [path]: text('x') });
    expect(await refusal(zip)).toMatchObject({ code: 'store/zip-unsafe', facts: { why: 'path' } });
  });

  it('with a link is refused', async () => {
    const link = [text('/etc/passwd'), { os: 3, attrs: 0o120777 << 16 }] as const;
    const zip = await crafted({ 's/session.json': session, 's/runs/a/source.csv': [link[0], link[1]] });
    expect(await refusal(zip)).toMatchObject({ code: 'store/zip-unsafe', facts: { why: 'link' } });
  });

  it('with one name twice, also in another case, is refused', async () => {
    const zip = await crafted({ 's/session.json': session, 's/SESSION.json': session });
    expect(await refusal(zip)).toMatchObject({ code: 'store/zip-unsafe', facts: { why: 'twice' } });
  });

  it.each(['first', 'last'] as const)(
    'in which a name differs between its two places (the %s) is refused: its file would be left behind',
    async (which) => {
      const files = { 's/session.json': session, 's/runs/a/source.csv': text('x') };
      const zip = await crafted(files, (bytes) => {
        const all = Buffer.from(bytes.buffer);
        const at = which === 'first' ? all.indexOf('s/session') : all.lastIndexOf('s/runs');
        bytes[at] = (bytes[at] ?? 0) ^ 4;
      });
      expect((await refusal(zip))?.code).toBe('store/zip-damaged');
    },
  );

  it('encrypted or packed in another way is refused', async () => {
    const mark = (offset: number, value: number) => (bytes: Uint8Array) => {
      const at = Buffer.from(bytes.buffer).indexOf('PK\x01\x02', 0, 'latin1');
      bytes[at + offset] = value;
    };
    const encrypted = await crafted({ 's/session.json': session }, mark(8, 1));
    expect(await refusal(encrypted)).toMatchObject({ facts: { why: 'encrypted' } });
    const packed = await crafted({ 's/session.json': session }, mark(10, 12));
    expect(await refusal(packed)).toMatchObject({ facts: { why: 'method' } });
  });

  it('that unpacks to far too much is refused before anything is written', async () => {
    const zip = await crafted({
      's/session.json': session,
      's/zeros': [new Uint8Array(110 << 20), { level: 1 }],
    });
    expect((await stat(zip)).size).toBeLessThan(600_000);
    expect((await refusal(zip))?.code).toBe('store/zip-too-large');
  });

  it('that tells a small size and unpacks to more is stopped there', async () => {
    const zip = await crafted({ 's/session.json': session, 's/zeros': new Uint8Array(1 << 20) }, (bytes) => {
      const view = new DataView(bytes.buffer, bytes.byteOffset);
      const at = Buffer.from(bytes.buffer).lastIndexOf('PK\x01\x02', bytes.length, 'latin1');
      view.setUint32(at + 24, 100, true);
    });
    expect(await refusal(zip)).toMatchObject({ code: 'store/zip-damaged', facts: { entry: 's/zeros' } });
  });

  it.each([
    ['65,535 entries', 10, 2],
    ['a directory of 4 GB', 12, 4],
    ['a directory behind 4 GB', 16, 4],
  ] as const)(
    'in the format for giants (%s) is refused with what to do instead',
    async (_, offset, length) => {
      const zip = await crafted({ 's/session.json': session }, (bytes) => {
        const end = Buffer.from(bytes.buffer).lastIndexOf('PK\x05\x06', bytes.length, 'latin1');
        bytes.fill(0xff, end + offset, end + offset + length);
      });
      const problem = await refusal(zip);
      expect(problem?.code).toBe('store/zip-too-large');
      expect(problem && problemText(problem, createShow('en', metricUnits)).remedy).toContain(
        'copy the folder',
      );
    },
  );

  it('whose entries lie over each other is refused', async () => {
    const zip = await crafted(
      { 's/session.json': session, 's/a': text('aaaa'), 's/b': text('bbbb') },
      (bytes) => {
        const view = new DataView(bytes.buffer, bytes.byteOffset);
        const all = Buffer.from(bytes.buffer);
        const last = all.lastIndexOf('PK\x01\x02', bytes.length, 'latin1');
        const first = all.indexOf('PK\x01\x02', 0, 'latin1');
        view.setUint32(last + 42, view.getUint32(first + 42, true), true);
      },
    );
    expect(await refusal(zip)).toMatchObject({ code: 'store/zip-unsafe', facts: { why: 'overlap' } });
  });

  it.each([
    ['no session', { 'photo.jpg': text('x') }],
    ['two sessions', { 'a/session.json': text('{}'), 'b/session.json': text('{}') }],
    ['a session too deep', { 'a/b/session.json': text('{}') }],
    ['nothing', {}],
  ])('with %s is told so', async (_, files) => {
    expect((await refusal(await crafted(files)))?.code).toBe('store/zip-no-session');
  });

  it('that is no zip is told so', async () => {
    const path = join(await scratchFolder(), 'x.zip');
    await writeFile(path, `PK${'x'.repeat(5000)}`);
    expect((await refusal(path))?.code).toBe('store/not-a-zip');
  });

  it('a session zipped by hand, at the top and with what macOS adds, is taken', async () => {
    const folder = await filledFolder();
    const files: Zippable = { '__MACOSX/._x': text('x'), '.DS_Store': text('x') };
    const contents = await contentsOf(folder);
    for (const [path, content] of Object.entries(contents)) files[path] = Buffer.from(content, 'latin1');
    const there = unwrap(await unzipSession(await crafted(files), await scratchFolder())).folder;
    expect(basename(there)).toBe('crafted');
    expect(await contentsOf(there)).toEqual(contents);
  });
});
