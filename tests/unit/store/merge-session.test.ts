import { cp, mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { unwrap } from '../../../core/result/index.ts';
import { EntrySchema, type Session } from '../../../core/session/index.ts';
import {
  checkSession,
  closeSession,
  createSessionFolder,
  importLog,
  mergeSession,
  type OpenSession,
  readSource,
  saveRun,
  saveSession,
} from '../../../electron/store/index.ts';
import { contentsOf } from '../../support/folder-contents.ts';
import {
  moment,
  newSessionFolder,
  opened,
  sampleLog,
  sampleSession,
  scratchFolder,
} from '../../support/store-session.ts';

async function take(open: OpenSession, n: number, name = `log ${n}.csv`) {
  return unwrap(await importLog(open, { name, content: sampleLog(n) }, {}, moment(n))).record;
}

function withEntry(session: Session, id: string, runId: string): Session {
  const entry = EntrySchema.parse({ id, kind: 'boost', createdAt: moment(5), runs: [{ runId }] });
  return { ...session, ledger: [...session.ledger, entry] };
}

/** One session with a run, and a copy of it on another laptop. */
async function twoCopies() {
  const folder = await newSessionFolder();
  const first = await opened(folder);
  const shared = await take(first, 1);
  unwrap(await saveSession(first, { ...first.session, note: 'morning' }, moment(2)));
  await closeSession(first);
  const copy = join(await scratchFolder(), 'copy');
  await cp(folder, copy, { recursive: true });
  return { shared, mine: await opened(folder, 3), theirs: await opened(copy, 3) };
}

describe('two copies of one session', () => {
  it('come together with every run, entry and note of both', async () => {
    const { shared, mine, theirs } = await twoCopies();
    const here = await take(mine, 2);
    unwrap(await saveSession(mine, withEntry(mine.session, 'here', here.id), moment(4)));
    const there = await take(theirs, 3);
    unwrap(await saveRun(theirs, { ...shared, note: 'gusty' }, moment(4)));
    const limits = { ...theirs.session.limits, leanestLambda: 0.86 };
    unwrap(await saveSession(theirs, withEntry({ ...theirs.session, limits }, 'there', there.id), moment(4)));
    await mkdir(join(theirs.folder, 'handover'));
    await writeFile(join(theirs.folder, 'handover', 'summary.html'), 'theirs');
    const untouched = await contentsOf(theirs.folder);

    const report = unwrap(await mergeSession(mine, theirs.folder, moment(6)));
    expect(report.newRuns).toEqual([there.id]);
    expect(report.conflicts.map((c) => [c.file, c.path, c.kind])).toEqual([
      ['session.json', 'ledger', 'order'],
    ]);
    expect(mine.session.ledger.map((e) => e.id)).toEqual(['baseline', 'here', 'there']);
    expect(mine.session.limits.leanestLambda).toBe(0.86);
    expect(mine.runs.get(shared.id)?.record.note).toBe('gusty');
    expect(mine.runs.get(there.id)?.record).toEqual(there);
    expect(unwrap(await readSource(mine, there.id))).toEqual(Buffer.from(sampleLog(3)));
    expect(await readFile(join(mine.folder, 'handover', 'summary.html'), 'utf8')).toBe('theirs');
    expect(await contentsOf(theirs.folder)).toEqual(untouched);

    const again = unwrap(await mergeSession(mine, theirs.folder, moment(7)));
    expect(again).toMatchObject({ newRuns: [], conflicts: [], record: null });
    expect(mine.session.ledger.map((e) => e.id)).toEqual(['baseline', 'here', 'there']);
    await closeSession(mine);
    await closeSession(theirs);
    expect(unwrap(await checkSession(mine.folder))).toMatchObject({ isSound: true, remarks: [], runs: 3 });
  });

  it('a note changed on both is told with both texts, and both are on the disk', async () => {
    const { mine, theirs } = await twoCopies();
    unwrap(await saveSession(mine, { ...mine.session, note: 'mine' }, moment(4)));
    unwrap(await saveSession(theirs, { ...theirs.session, note: 'theirs' }, moment(4)));
    const report = unwrap(await mergeSession(mine, theirs.folder, moment(6)));
    expect(report.conflicts).toEqual([
      { file: 'session.json', path: 'note', kind: 'value', base: 'morning', mine: 'mine', theirs: 'theirs' },
    ]);
    expect(mine.session.note).toBe('mine');
    const record = JSON.parse(await readFile(join(mine.folder, report.record ?? ''), 'utf8'));
    expect(record).toMatchObject({ conflicts: report.conflicts, theirs: { note: 'theirs' } });
    await closeSession(mine);
    await closeSession(theirs);
  });

  it('one log imported on both under two names is one run, and the ledger follows', async () => {
    const { mine, theirs } = await twoCopies();
    const here = await take(mine, 2, 'pull.csv');
    const there = await take(theirs, 2, 'renamed.csv');
    expect(here.id).not.toBe(there.id);
    unwrap(await saveSession(theirs, withEntry(theirs.session, 'e', there.id), moment(4)));
    const report = unwrap(await mergeSession(mine, theirs.folder, moment(6)));
    expect(report).toMatchObject({ newRuns: [], conflicts: [] });
    expect(mine.runs.size).toBe(2);
    expect(mine.session.ledger.at(-1)?.runs[0]?.runId).toBe(here.id);
    await closeSession(mine);
    await closeSession(theirs);
  });

  it('a log that was lost here comes back from the copy, and one lost there is told', async () => {
    const { shared, mine, theirs } = await twoCopies();
    const there = await take(theirs, 3);
    await rm(join(mine.folder, 'runs', shared.id, 'source.csv'), { force: true });
    await closeSession(mine);
    await closeSession(theirs);
    await rm(join(theirs.folder, 'runs', there.id, 'source.csv'), { force: true });
    const again = await opened(mine.folder, 5);
    const report = unwrap(await mergeSession(again, theirs.folder, moment(6)));
    expect(report.newRuns).toEqual([]);
    expect(report.notices.map((n) => [n.code, n.facts])).toContainEqual([
      'store/source-missing',
      { runId: there.id, name: there.name },
    ]);
    expect((await readSource(again, shared.id)).ok).toBe(true);
    await closeSession(again);
  });

  it('copies whose history was thrown away still lose nothing', async () => {
    const { mine, theirs } = await twoCopies();
    unwrap(await saveSession(mine, { ...mine.session, note: 'mine' }, moment(4)));
    await closeSession(theirs);
    await rm(join(theirs.folder, 'history'), { recursive: true });
    const report = unwrap(await mergeSession(mine, theirs.folder, moment(6)));
    expect(report.conflicts.map((c) => [c.path, c.mine, c.theirs])).toEqual([['note', 'mine', 'morning']]);
    await closeSession(mine);
  });

  it('another session is refused, and nothing changes', async () => {
    const mine = await opened(await newSessionFolder());
    const stranger = { ...sampleSession('Other car'), id: 'other' };
    const folder = unwrap(await createSessionFolder(await scratchFolder(), stranger, moment(0)));
    const before = await contentsOf(mine.folder);
    const result = await mergeSession(mine, folder, moment(6));
    expect(result.ok ? '' : result.problems[0].code).toBe('store/other-session');
    expect(await contentsOf(mine.folder)).toEqual(before);
    await closeSession(mine);
    expect(await readdir(folder)).not.toContain('set-aside');
  });
});
