import { cp, mkdir, readdir, readFile, rename, rm, stat, symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { unwrap } from '../../../core/result/index.ts';
import {
  closeSession,
  createSessionAt,
  createSessionFolder,
  importLog,
  listSessions,
  openSession,
  readSource,
  saveRun,
  saveSession,
} from '../../../electron/store/index.ts';
import { contentsOf, editFile, flipBit } from '../../support/folder-contents.ts';
import {
  moment,
  newSessionFolder,
  opened,
  sampleLog,
  sampleSession,
  scratchFolder,
} from '../../support/store-session.ts';

const codes = (notes: readonly { code: string }[]) => notes.map((note) => note.code);

describe('creating and listing', () => {
  it('a session gets a folder of its name, a second one of that name a numbered one', async () => {
    const parent = await scratchFolder();
    const first = unwrap(await createSessionFolder(parent, sampleSession('CON'), moment(0)));
    const second = unwrap(await createSessionFolder(parent, sampleSession('CON'), moment(0)));
    expect([first, second]).toEqual([join(parent, 'session CON'), join(parent, 'session CON (2)')]);
    expect((await readdir(first)).sort()).toEqual(['history', 'runs', 'session.json']);
    const listed = unwrap(await listSessions([parent]));
    expect(listed.map((s) => [s.name, s.canOpen])).toEqual([
      ['CON', true],
      ['CON', true],
    ]);
  });

  it('sessions of every folder are listed together, newest first, and those behind a link once', async () => {
    const [now, earlier] = [await scratchFolder(), await scratchFolder()];
    const at = (name: string, createdAt: string) => ({ ...sampleSession(name), createdAt });
    unwrap(await createSessionFolder(now, at('second', moment(2)), moment(2)));
    unwrap(await createSessionFolder(earlier, at('first', moment(1)), moment(1)));
    unwrap(await createSessionFolder(earlier, at('third', moment(3)), moment(3)));
    const link = join(await scratchFolder(), 'link');
    await symlink(now, link, 'junction');
    const parents = [now, earlier, link, join(now, 'nowhere')];
    const listed = unwrap(await listSessions(parents));
    expect(listed.map((s) => s.name)).toEqual(['third', 'second', 'first']);
  });

  it('a session is not made over something that stands, but in an empty folder it is', async () => {
    const parent = await scratchFolder();
    await mkdir(join(parent, 'empty'));
    await mkdir(join(parent, 'full'));
    await writeFile(join(parent, 'full', 'x'), '');
    expect((await createSessionAt(join(parent, 'empty'), sampleSession(), moment(0))).ok).toBe(true);
    for (const name of ['empty', 'full', 'full/x']) {
      const again = await createSessionAt(join(parent, name), sampleSession(), moment(0));
      expect(again.ok ? '' : again.problems[0].code).toBe('store/already-there');
    }
    const nowhere = await createSessionAt(join(parent, 'no', 'where'), sampleSession(), moment(0));
    expect(nowhere).toMatchObject({
      problems: [{ code: 'store/no-folder', facts: { path: join(parent, 'no') } }],
    });
    expect((await readdir(parent)).sort()).toEqual(['empty', 'full']);
  });

  it('a folder that is no session is refused and left as it was', async () => {
    const folder = await scratchFolder();
    await writeFile(join(folder, 'holiday.txt'), 'x');
    const result = await openSession(folder, { now: moment(1) });
    expect(result.ok ? '' : result.problems[0].code).toBe('store/not-a-session');
    expect(await readdir(folder)).toEqual(['holiday.txt']);
  });
});

describe('importing', () => {
  it('keeps the bytes, read-only, with their hash, and leaves the original alone', async () => {
    const folder = await newSessionFolder();
    const open = await opened(folder);
    const path = join(await scratchFolder(), 'Été 3.csv');
    await writeFile(path, sampleLog(3));
    const { record, duplicateOf } = unwrap(await importLog(open, { path }, { note: 'wet' }, moment(2)));
    expect(record).toMatchObject({ name: 'Été 3.csv', note: 'wet', size_bytes: sampleLog(3).length });
    expect(duplicateOf).toBeNull();
    expect(record.id).toMatch(/^ete-3-[0-9a-f]{10}$/);
    const source = join(folder, 'runs', record.id, 'source.csv');
    expect((await stat(source)).mode & 0o222).toBe(0);
    expect(new Uint8Array(await readFile(source))).toEqual(sampleLog(3));
    expect(new Uint8Array(await readFile(path))).toEqual(sampleLog(3));
    await closeSession(open);

    const again = await opened(folder);
    expect(again.runs.get(record.id)?.record).toEqual(record);
    expect(unwrap(await readSource(again, record.id))).toEqual(Buffer.from(sampleLog(3)));
    expect(again.notices).toEqual([]);
    await closeSession(again);
  });

  it('the same bytes a second time are told as a duplicate and add nothing', async () => {
    const folder = await newSessionFolder();
    const open = await opened(folder);
    const first = unwrap(await importLog(open, { name: 'a.csv', content: sampleLog(1) }, {}, moment(2)));
    const before = await contentsOf(folder);
    const second = unwrap(await importLog(open, { name: 'b.csv', content: sampleLog(1) }, {}, moment(3)));
    expect(second).toEqual({ record: first.record, duplicateOf: first.record.id, healed: false });
    expect(await contentsOf(folder)).toEqual(before);
    await closeSession(open);
  });

  it('two imports and an edit at the same moment all arrive', async () => {
    const folder = await newSessionFolder();
    const open = await opened(folder);
    async function* slowly(n: number) {
      for (const byte of sampleLog(n).subarray(0, 50)) {
        await new Promise((resolve) => setImmediate(resolve));
        yield Uint8Array.of(byte);
      }
    }
    const results = await Promise.all([
      importLog(open, { name: 'a', content: slowly(1) }, {}, moment(2)),
      importLog(open, { name: 'b', content: slowly(1) }, {}, moment(2)),
      importLog(open, { name: 'a', content: sampleLog(7) }, {}, moment(2)),
      saveSession(open, { ...open.session, note: 'meanwhile' }, moment(2)),
    ]);
    expect(results.map((r) => r.ok)).toEqual([true, true, true, true]);
    await closeSession(open);
    const again = await opened(folder);
    expect(again.runs.size).toBe(2);
    expect(again.session.note).toBe('meanwhile');
    await closeSession(again);
  });

  it('an upload that breaks off leaves nothing behind', async () => {
    const folder = await newSessionFolder();
    const open = await opened(folder);
    const before = await contentsOf(folder);
    async function* broken() {
      yield sampleLog(1);
      throw Object.assign(new Error('reset'), { code: 'ECONNRESET' });
    }
    const result = await importLog(open, { name: 'a.csv', content: broken() }, {}, moment(2));
    expect(result.ok ? '' : result.problems[0].code).toBe('store/upload-broken');
    expect(await contentsOf(folder)).toEqual(before);
    await closeSession(open);
  });

  it('a log that is not there, or is a folder, is told', async () => {
    const folder = await newSessionFolder();
    const open = await opened(folder);
    const problems = [];
    for (const path of [join(folder, 'none.csv'), folder]) {
      const result = await importLog(open, { path }, {}, moment(2));
      problems.push(result.ok ? '' : result.problems[0].code);
    }
    expect(problems).toEqual(['store/missing', 'store/is-a-folder']);
    await closeSession(open);
  });
});

describe('saving', () => {
  it('keeps earlier versions, and a key added by hand survives', async () => {
    const folder = await newSessionFolder();
    await editFile(join(folder, 'session.json'), (text) => text.replace('{', '{ "trackDay": {"lane": 3},'));
    const open = await opened(folder);
    expect(open.notices).toEqual([
      { code: 'store/changed-outside', facts: { file: 'session.json', fields: ['trackDay'] } },
    ]);
    unwrap(await saveSession(open, { ...open.session, note: 'second' }, moment(2)));
    await closeSession(open);
    const text = JSON.parse(await readFile(join(folder, 'session.json'), 'utf8'));
    expect(text).toMatchObject({ trackDay: { lane: 3 }, note: 'second', seal: { savedAt: moment(2) } });
    expect(Object.keys(text).at(0)).toBe('schemaVersion');
    expect((await readdir(join(folder, 'history'))).map((name) => name.slice(0, 31))).toEqual([
      'session-r000001-20270314T100000',
      'session-r000002-20270314T100100',
      'session-r000003-20270314T100200',
    ]);
  });

  it('what did not change is not written again', async () => {
    const folder = await newSessionFolder();
    const open = await opened(folder);
    const before = await contentsOf(folder);
    unwrap(await saveSession(open, { ...open.session }, moment(5)));
    expect(await contentsOf(folder)).toEqual(before);
    await closeSession(open);
  });

  it('a run’s notes are saved, its hash is not for changing', async () => {
    const folder = await newSessionFolder();
    const open = await opened(folder);
    const { record } = unwrap(await importLog(open, { name: 'a.csv', content: sampleLog(1) }, {}, moment(2)));
    const bent = { ...record, note: 'gusty', sha256: '0'.repeat(64), mine: 1 };
    unwrap(await saveRun(open, bent, moment(3)));
    await closeSession(open);
    const again = await opened(folder);
    expect(again.runs.get(record.id)?.record).toEqual({ ...record, note: 'gusty', mine: 1 });
    await closeSession(again);
  });

  it('a file that another program changed meanwhile is not overwritten, unless wanted, and then kept', async () => {
    const folder = await newSessionFolder();
    const open = await opened(folder);
    await editFile(join(folder, 'session.json'), (text) => text.replace('"note": ""', '"note": "by hand"'));
    const refused = await saveSession(open, { ...open.session, note: 'mine' }, moment(2));
    expect(refused.ok ? '' : refused.problems[0].code).toBe('store/changed-outside');
    unwrap(await saveSession(open, { ...open.session, note: 'mine' }, moment(2), { overwrite: true }));
    await closeSession(open);
    const kept = Object.entries(await contentsOf(folder)).filter(([, text]) => text.includes('by hand'));
    expect(kept.map(([name]) => name.slice(0, 23))).toEqual(['history/session-r000002']);
    expect((await opened(folder)).session.note).toBe('mine');
  });

  it('after closing nothing is written any more', async () => {
    const open = await opened(await newSessionFolder());
    await closeSession(open);
    await closeSession(open);
    const result = await saveSession(open, { ...open.session, note: 'late' }, moment(2));
    expect(result.ok ? '' : result.problems[0].code).toBe('store/closed');
  });

  it('a folder that vanished is told so, and what was saved is there when it comes back', async () => {
    const folder = await newSessionFolder();
    const open = await opened(folder);
    await rename(folder, `${folder}-away`);
    const gone = await saveSession(open, { ...open.session, note: 'lost?' }, moment(2));
    expect(gone.ok ? '' : gone.problems[0].code).toBe('store/folder-gone');
    await rename(`${folder}-away`, folder);
    expect((await saveSession(open, { ...open.session, note: 'back' }, moment(2))).ok).toBe(true);
    await closeSession(open);
  });
});

describe('damage', () => {
  it('a single flipped bit anywhere in session.json is noticed, set aside and repaired from history', async () => {
    const folder = await newSessionFolder();
    const path = join(folder, 'session.json');
    const good = await readFile(path);
    for (let at = 3; at < good.length; at += 23) {
      await flipBit(path, at, at % 8);
      const bad = await readFile(path);
      const open = await opened(folder);
      expect(codes(open.notices)).toEqual(['store/restored']);
      expect(open.session.name).toBe('Fenmoor hatch');
      await closeSession(open);
      expect(await readFile(path)).toEqual(good);
      const [aside] = await readdir(join(folder, 'set-aside'));
      expect(aside).toMatch(/^20270314T100100Z-session\.json$/);
      expect(await readFile(join(folder, 'set-aside', aside ?? ''))).toEqual(bad);
      await rm(join(folder, 'set-aside'), { recursive: true });
    }
  });

  it.each([
    ['empty', ''],
    ['cut off', '{"schemaVersion": 1, "id": "fen'],
    ['no JSON', 'hello'],
    ['a list', '[]'],
    ['zeros', '\0'.repeat(500)],
    ['nested without end', `{"x":${'[{"y":'.repeat(50_000)}1${'}]'.repeat(50_000)}}`],
  ])('%s in place of session.json is set aside and repaired', async (_, text) => {
    const folder = await newSessionFolder();
    await writeFile(join(folder, 'session.json'), text);
    const open = await opened(folder);
    expect(codes(open.notices)).toEqual(['store/restored']);
    await closeSession(open);
  });

  it('a missing session.json is put back from history', async () => {
    const folder = await newSessionFolder();
    await rm(join(folder, 'session.json'));
    const open = await opened(folder);
    expect(open.notices).toMatchObject([{ code: 'store/restored', facts: { to: null } }]);
    await closeSession(open);
  });

  it('beyond repair it is refused with its name and left where it is', async () => {
    const folder = await newSessionFolder();
    await writeFile(join(folder, 'session.json'), 'junk');
    await rm(join(folder, 'history'), { recursive: true });
    const before = await contentsOf(folder);
    const result = await openSession(folder, { now: moment(1) });
    expect(result).toMatchObject({ ok: false, problems: [{ code: 'store/damaged' }] });
    expect(await contentsOf(folder)).toEqual(before);
    expect(unwrap(await listSessions([join(folder, '..')]))).toMatchObject([{ canOpen: false }]);
  });

  it('a damaged run.json is repaired, the rest is as it was', async () => {
    const folder = await newSessionFolder();
    const open = await opened(folder);
    const runs = [];
    for (const n of [1, 2, 3]) {
      runs.push(unwrap(await importLog(open, { name: `${n}.csv`, content: sampleLog(n) }, {}, moment(n))));
    }
    const [first, second] = runs.map((run) => run.record);
    if (!first || !second) throw new Error('three were imported');
    unwrap(await saveRun(open, { ...first, note: 'kept' }, moment(4)));
    await closeSession(open);
    const before = await contentsOf(folder);
    await flipBit(join(folder, 'runs', first.id, 'run.json'), 40);
    const again = await opened(folder);
    expect(again.notices).toMatchObject([
      { code: 'store/restored', facts: { file: `runs/${first.id}/run.json` } },
    ]);
    expect(again.runs.get(first.id)?.record.note).toBe('kept');
    expect(again.runs.size).toBe(3);
    await closeSession(again);
    await rm(join(folder, 'set-aside'), { recursive: true });
    expect(await contentsOf(folder)).toEqual(before);

    // With all its versions gone, the record is made anew from the log.
    await writeFile(join(folder, 'runs', second.id, 'run.json'), '');
    await rm(join(folder, 'runs', second.id, 'history'), { recursive: true });
    const third = await opened(folder, 9);
    expect(codes(third.notices)).toEqual(['store/set-aside', 'store/run-rebuilt']);
    expect(third.runs.get(second.id)?.record).toMatchObject({ sha256: second.sha256, importedAt: moment(9) });
    await closeSession(third);
  });

  it('a damaged log is told when it is read, and importing the original heals it', async () => {
    const folder = await newSessionFolder();
    const open = await opened(folder);
    const { record } = unwrap(await importLog(open, { name: 'a.csv', content: sampleLog(1) }, {}, moment(2)));
    const source = join(folder, 'runs', record.id, 'source.csv');
    await flipBit(source, 100);
    const bad = await readSource(open, record.id);
    expect(bad.ok ? '' : bad.problems[0].code).toBe('store/source-damaged');
    const healed = unwrap(await importLog(open, { name: 'b.csv', content: sampleLog(1) }, {}, moment(3)));
    expect(healed).toMatchObject({ duplicateOf: record.id, healed: true });
    expect((await readSource(open, record.id)).ok).toBe(true);
    expect(await readdir(join(folder, 'set-aside'))).toHaveLength(1);
    await rm(source);
    await closeSession(open);
    const again = await opened(folder);
    expect(codes(again.notices)).toEqual(['store/source-missing']);
    expect(
      unwrap(await importLog(again, { name: 'c.csv', content: sampleLog(1) }, {}, moment(4))).healed,
    ).toBe(true);
    await closeSession(again);
  });

  it('a link planted in place of a file is never followed', async () => {
    const folder = await newSessionFolder();
    const open = await opened(folder);
    const one = unwrap(await importLog(open, { name: 'a.csv', content: sampleLog(1) }, {}, moment(2)));
    const two = unwrap(await importLog(open, { name: 'b.csv', content: sampleLog(2) }, {}, moment(2)));
    await closeSession(open);
    const secret = join(await scratchFolder(), 'secret');
    await writeFile(secret, '{"private": true}');
    const runs = [one, two].map(({ record }) => join(folder, 'runs', record.id));
    for (const path of [join(folder, 'session.json'), `${runs[0]}/run.json`, `${runs[1]}/source.csv`]) {
      await rm(path, { force: true });
      await symlink(secret, path);
    }
    await symlink(join(secret, '..'), join(folder, 'runs', 'elsewhere'));
    const again = await opened(folder);
    expect(codes(again.notices).sort()).toEqual([
      'store/restored',
      'store/restored',
      'store/source-missing',
      'store/unknown-file',
    ]);
    expect(again.runs.size).toBe(2);
    const read = await readSource(again, two.record.id);
    expect(read.ok ? '' : read.problems[0].code).toBe('store/not-a-plain-file');
    await closeSession(again);
    expect(await readFile(secret, 'utf8')).toBe('{"private": true}');
  });

  it('opened only for reading, nothing is moved or written', async () => {
    const folder = await newSessionFolder();
    await flipBit(join(folder, 'session.json'), 40);
    const before = await contentsOf(folder);
    const open = unwrap(await openSession(folder, { now: moment(1), readOnly: true }));
    expect(codes(open.notices)).toEqual(['store/damage-left']);
    expect(open.session.name).toBe('Fenmoor hatch');
    const refused = await saveSession(open, { ...open.session, note: 'x' }, moment(2));
    expect(refused.ok ? '' : refused.problems[0].code).toBe('store/read-only');
    await closeSession(open);
    expect(await contentsOf(folder)).toEqual(before);
  });
});

describe('versions', () => {
  it('a newer format is refused and left alone', async () => {
    const folder = await newSessionFolder();
    await editFile(join(folder, 'session.json'), (text) =>
      text.replace('"schemaVersion": 1', '"schemaVersion": 99'),
    );
    const before = await contentsOf(folder);
    const result = await openSession(folder, { now: moment(1) });
    expect(result).toMatchObject({ ok: false, problems: [{ code: 'session/newer-version' }] });
    expect(await contentsOf(folder)).toEqual(before);
  });

  it('an older format is migrated with its original kept', async () => {
    const folder = join(await scratchFolder(), 'old');
    await cp(new URL('../../support/fixtures/session-v0', import.meta.url).pathname, folder, {
      recursive: true,
    });
    const original = await readFile(join(folder, 'session.json'));
    const looked = unwrap(await openSession(folder, { now: moment(1), readOnly: true }));
    expect(looked.session.schemaVersion).toBe(1);
    expect(await readFile(join(folder, 'session.json'))).toEqual(original);
    const open = await opened(folder);
    expect(open.notices).toMatchObject([{ code: 'store/migrated', facts: { from: 0, to: 1 } }]);
    expect(open.session).toMatchObject({
      name: 'Wharf Lane coupe',
      car: { mass_kg: 2866 * 0.45359237 },
      weatherNote: 'dry, gusty',
    });
    expect(open.session.ledger.map((e) => [e.kind, e.runs[0]?.runId])).toEqual([
      ['baseline', 'first-pull'],
      ['boost', undefined],
    ]);
    expect(open.runs.get('first-pull')?.hasSource).toBe(true);
    await closeSession(open);
    const kept = (await readdir(join(folder, 'history'))).find((name) => name.endsWith('-original.json'));
    expect(await readFile(join(folder, 'history', kept ?? ''))).toEqual(original);
    const again = await opened(folder);
    expect(again.notices).toEqual([]);
    await closeSession(again);
  });
});
