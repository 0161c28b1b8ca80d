import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type {
  HostEvent,
  HostPort,
  RequestContext,
  RequestInput,
  RequestName,
  RequestOutput,
} from '../../../core/contract/index.ts';
import { type ColumnMapping, fileColumns, withCorrections } from '../../../core/log/index.ts';
import { type Result, unwrap } from '../../../core/result/index.ts';
import { createHost, preferencesInMemory } from '../../../electron/host/index.ts';
import { closeSession, importLog, openSession } from '../../../electron/store/index.ts';
import { sampleCopy, temporaryFolder } from '../../support/sample-copy.ts';

const loose = new URL('../../../sample-sessions/loose-logs/before-1.00-bar.csv', import.meta.url).pathname;
const looseOther = loose.replace('before-1.00', 'after-1.10');
const context: RequestContext = { requestId: 't', signal: { aborted: false }, progress: () => undefined };

let place: ReturnType<typeof temporaryFolder>;
let host: HostPort;
let nextId = 0;

function makeHost(): HostPort {
  return createHost({
    version: '0.0.0',
    shell: 'web',
    sessionsFolder: place.folder,
    sampleFolder: null,
    preferences: preferencesInMemory(),
    now: () => '2027-03-14T12:00:00.000Z',
    newId: () => `id-${nextId++}`,
  });
}

function ask<N extends RequestName>(name: N, input: RequestInput<N>): Promise<Result<RequestOutput<N>>> {
  return host.handle(name, input, context) as Promise<Result<RequestOutput<N>>>;
}

async function snapshot(): Promise<RequestOutput<'sessions.open'>> {
  return unwrap(await ask('session.get', {})) as RequestOutput<'sessions.open'>;
}

async function* bytesOf(text: string): AsyncGenerator<Uint8Array> {
  yield new TextEncoder().encode(text);
}

beforeEach(() => {
  place = temporaryFolder();
  nextId = 0;
  host = makeHost();
});

afterEach(async () => {
  await host.close();
  place.remove();
});

describe('the host without a session', () => {
  it('says that none is open', async () => {
    expect(await ask('session.get', {})).toEqual({ ok: true, value: null });
    expect(await ask('ledger.get', {})).toMatchObject({ problems: [{ code: 'contract/no-session' }] });
  });

  it('refuses what it does not know and what does not fit, naming the field', async () => {
    expect(await host.handle('__proto__', {}, context)).toMatchObject({
      problems: [{ code: 'contract/unknown-request' }],
    });
    expect(await host.handle('sessions.open', { folder: 3 }, context)).toMatchObject({
      problems: [{ code: 'contract/input-invalid', facts: { field: 'folder' } }],
    });
  });

  it('makes a session with only a name and a mass, ready for its baseline', async () => {
    const made = unwrap(await ask('sessions.create', { name: 'A/B: *?', car: { mass_kg: 1400 } }));
    expect(made.session.ledger).toHaveLength(1);
    expect(existsSync(join(made.folder, 'session.json'))).toBe(true);
    const list = unwrap(await ask('sessions.list', {}));
    expect(list.sessions).toMatchObject([{ name: 'A/B: *?' }]);
  });
});

describe('the host with the sample session', () => {
  let folder: string;

  beforeEach(async () => {
    folder = sampleCopy(place.folder);
    unwrap(await ask('sessions.open', { folder }));
  });

  it('tells the day: what each change was worth', async () => {
    const { lines } = unwrap(await ask('ledger.get', {}));
    expect(lines.map((l) => l.verdict?.kind ?? null)).toEqual([
      null,
      'equivalent',
      'gain',
      'gain',
      'equivalent',
      'not-comparable',
    ]);
  });

  it('compares two entries with curve and witnesses, and names one that is not there', async () => {
    const [, before, after] = (await snapshot()).session.ledger.map((e) => e.id) as [string, string, string];
    const verdict = unwrap(await ask('entries.compare', { before, after }));
    expect(verdict.kind).toBe('gain');
    expect(verdict.curve?.delta.length).toBe(verdict.curve?.engineSpeed_rad_s.length);
    expect(verdict.witnesses.length).toBeGreaterThan(5);
    expect(await ask('entries.compare', { before: 'nobody', after })).toMatchObject({
      problems: [{ code: 'session/no-entry' }],
    });
  });

  it('an edit is on the disk when it is answered, and undo and redo go both ways', async () => {
    const onDisk = () => JSON.parse(readFileSync(join(folder, 'session.json'), 'utf8')).note;
    const note = 'windy after noon';
    const edited = unwrap(await ask('session.edit', { edits: [{ type: 'session.note', note }] }));
    expect(edited.undoTitle).toBe('session.note');
    expect(onDisk()).toBe(note);
    unwrap(await ask('session.undo', {}));
    expect(onDisk()).not.toBe(note);
    const redone = unwrap(await ask('session.redo', {}));
    expect(redone.session.note).toBe(note);
    expect(onDisk()).toBe(note);
    expect(await ask('session.redo', {})).toMatchObject({ problems: [{ code: 'session/nothing-to-redo' }] });
  });

  it('edits that join are one step of undo', async () => {
    for (const note of ['w', 'wi', 'win']) {
      unwrap(await ask('session.edit', { edits: [{ type: 'session.note', note }], joinKey: 'note' }));
    }
    const undone = unwrap(await ask('session.undo', {}));
    expect(undone.session.note).not.toMatch(/^w/);
    expect(undone.undoTitle).toBeNull();
  });

  it('several edits at once are all done or none', async () => {
    const { name } = (await snapshot()).session;
    const refused = await ask('session.edit', {
      edits: [
        { type: 'session.rename', name: 'Other' },
        { type: 'entry.remove', entryId: 'nobody' },
      ],
    });
    expect(refused.ok).toBe(false);
    expect((await snapshot()).session.name).toBe(name);
  });

  it('dropping a pull takes it out of the verdict, and undo brings it back', async () => {
    const { session, runs } = await snapshot();
    const run = runs.find((r) => r.record.id === session.ledger[2]?.runs[0]?.runId);
    const pull = run?.pulls.find((p) => p.counts);
    const count = async () => unwrap(await ask('ledger.get', {})).lines[2]?.pulls ?? 0;
    const all = await count();
    const at_s = (pull?.start_s ?? 0) + 1;
    const runId = run?.record.id ?? '';
    unwrap(
      await ask('session.edit', {
        edits: [{ type: 'pull.edit', runId, edit: { at_s, action: 'drop', reason: 'clutch slipped' } }],
      }),
    );
    expect(await count()).toBe(all - 1);
    unwrap(await ask('session.undo', {}));
    expect(await count()).toBe(all);
  });

  it('a log of another style imports with no hand mapping, and joins its entry', async () => {
    const events: HostEvent[] = [];
    host.subscribe((event) => events.push(event));
    const entryId = (await snapshot()).session.ledger[0]?.id ?? '';
    const done = unwrap(await ask('runs.import', { path: loose, entryId }));
    expect(done.run.problems).toEqual([]);
    expect(done.run.pulls.filter((p) => p.counts).length).toBeGreaterThanOrEqual(2);
    expect(done.snapshot.session.ledger[0]?.runs.at(-1)?.runId).toBe(done.run.record.id);
    expect(events.some((e) => e.type === 'session-changed')).toBe(true);
    const again = unwrap(await ask('runs.import', { path: loose }));
    expect(again.duplicateOf).toBe(done.run.record.id);
  });

  it('a log with the columns of one that was corrected is read so at once and says why; undo takes it off', async () => {
    const first = unwrap(await ask('runs.import', { path: loose }));
    const columns = fileColumns(first.run.columns);
    const boost = first.run.columns.find((c) => c.quantity === 'manifoldPressure' || c.quantity === 'boost');
    const column = boost?.column ?? '';
    const corrections = [{ column, quantity: 'fuelPressure' as const, unit: 'kPa' }];
    unwrap(await ask('preferences.set', { columnProfiles: withCorrections([], columns, corrections) }));
    const other = unwrap(await ask('runs.import', { path: looseOther }));
    const read = other.run.columns.find((c) => c.column === column);
    expect(read).toMatchObject({ quantity: 'fuelPressure', unit: 'kPa' });
    expect(read?.reason?.code).toBe('log/column-by-profile');
    expect(other.run.warnings).toContainEqual({ code: 'log/profile-used', facts: { count: 1 } });
    const undone = unwrap(await ask('session.undo', {}));
    const again = undone.runs.find((r) => r.record.id === other.run.record.id);
    expect(again?.columns.find((c) => c.column === column)?.quantity).toBe(boost?.quantity);
  });

  it('undo never takes back an import', async () => {
    unwrap(await ask('session.edit', { edits: [{ type: 'session.note', note: 'x' }] }));
    const done = unwrap(await ask('runs.import', { path: loose }));
    const undone = unwrap(await ask('session.undo', {}));
    expect(undone.runs.some((r) => r.record.id === done.run.record.id)).toBe(true);
  });

  it('a file that is no log is refused by name, nothing of it is kept, and the next is taken', async () => {
    const before = await snapshot();
    const runFolders = () => readdirSync(join(folder, 'runs')).sort();
    const kept = runFolders();
    const refused = await host.upload(
      { name: 'page.csv', entryId: null },
      bytesOf('<!doctype html><p>x'),
      context,
    );
    expect(refused).toMatchObject({
      ok: false,
      problems: [{ code: 'log/not-a-table', facts: { found: 'web-page' }, where: { file: 'page.csv' } }],
    });
    expect(await snapshot()).toEqual(before);
    expect(runFolders()).toEqual(kept);
    expect(unwrap(await ask('runs.import', { path: loose })).run.problems).toEqual([]);
  });

  it('a session that took such a file in earlier stays readable, and says what it is', async () => {
    unwrap(await ask('sessions.close', {}));
    const open = unwrap(await openSession(folder, { now: '2027-03-14T12:00:00.000Z' }));
    const page = { name: 'page.csv', content: new TextEncoder().encode('<!doctype html><p>x') };
    const { record } = unwrap(await importLog(open, page, {}, '2027-03-14T12:00:00.000Z'));
    unwrap(await closeSession(open));
    unwrap(await ask('sessions.open', { folder }));
    const run = (await snapshot()).runs.find((r) => r.record.id === record.id);
    expect(run).toMatchObject({ pulls: [], problems: [{ code: 'log/not-a-table' }] });
  });

  it('a log in which no time can be found is kept with what is wrong: its columns can be put right', async () => {
    const rows = Array.from({ length: 40 }, (_, i) => `${2000 + ((i * 7919) % 501)},${i % 3}`);
    const log = bytesOf(`Engine Speed (rpm),Boost (kPa)\n${rows.join('\n')}\n`);
    const { run } = unwrap(await host.upload({ name: 'no-time.csv', entryId: null }, log, context));
    expect(run.problems.map((p) => p.code)).toEqual(['log/no-time']);
    expect(run.columns.map((c) => [c.column, c.quantity])).toEqual([
      ['Engine Speed (rpm)', null],
      ['Boost (kPa)', null],
    ]);
  });

  it('a log whose time stands still has columns of which another can be told to be it', async () => {
    const rows = Array.from({ length: 40 }, (_, i) => `7.0,${i},${2000 + ((i * 7919) % 501)}`);
    const log = bytesOf(`Time (s),Count,Engine Speed (rpm)\n${rows.join('\n')}\n`);
    const { run } = unwrap(await host.upload({ name: 'stands.csv', entryId: null }, log, context));
    expect(run.problems.map((p) => p.code)).toEqual(['log/time-stands-still']);
    expect(run.columns.map((c) => c.column)).toEqual(['Time (s)', 'Count', 'Engine Speed (rpm)']);
  });

  it('a log that counts its rows is read once its number is told to be time, and so is the next one', async () => {
    const log = (seed: number) =>
      bytesOf(
        `Count,Engine Speed (rpm)\n${Array.from({ length: 40 }, (_, i) => `${i},${2000 + ((i * seed) % 501)}`).join('\n')}\n`,
      );
    const first = unwrap(await host.upload({ name: 'one.csv', entryId: null }, log(7919), context));
    const columns: ColumnMapping[] = [{ column: 'Count', quantity: 'time', unit: '1/20 s' }];
    expect(first.run.columns.map((c) => c.column)).toEqual(['Count', 'Engine Speed (rpm)']);
    const set = { type: 'run.set', runId: first.run.record.id, patch: { columns } } as const;
    const { runs } = unwrap(await ask('session.edit', { edits: [set] }));
    const read = runs.find((r) => r.record.id === first.run.record.id);
    expect(read?.problems).toEqual([]);
    expect(read?.duration_s).toBeCloseTo(39 / 20, 9);
    const columnProfiles = withCorrections([], fileColumns(first.run.columns), columns);
    unwrap(await ask('preferences.set', { columnProfiles }));
    const second = unwrap(await host.upload({ name: 'two.csv', entryId: null }, log(6007), context));
    expect(second.run.problems).toEqual([]);
    expect(second.run.duration_s).toBeCloseTo(39 / 20, 9);
  });

  it('a spike of one sample survives thinning', async () => {
    const run = (await snapshot()).runs[0];
    const column = run?.columns.find((c) => c.quantity === 'engineSpeed')?.column ?? '';
    const wanted = { runId: run?.record.id ?? '', columns: [column] };
    const full = unwrap(await ask('runs.channels', { ...wanted, most: 200_000 })).channels[0];
    const thin = unwrap(await ask('runs.channels', { ...wanted, most: 100 })).channels[0];
    const highest = (values: readonly (number | null)[] = []) => Math.max(...values.map((v) => v ?? 0));
    expect(thin?.values.length).toBeLessThanOrEqual(100);
    expect(highest(thin?.values)).toBe(highest(full?.values));
  });

  it('a session that is open elsewhere opens for reading and refuses edits with the reason', async () => {
    const other = makeHost();
    const opened = unwrap(
      (await other.handle('sessions.open', { folder }, context)) as Result<RequestOutput<'sessions.open'>>,
    );
    expect(opened.readOnly?.code).toBe('store/locked');
    const edits = [{ type: 'session.note', note: 'x' }];
    expect(await other.handle('session.edit', { edits }, context)).toMatchObject({
      problems: [{ code: 'store/locked' }],
    });
    await other.close();
  });
});
