import { cpSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { metricUnits } from '../../../core/units/index.ts';
import { conflictPlace, conflictValue, createShow, type Language } from '../../../core/words/index.ts';
import { sha256 } from '../../../electron/store/index.ts';
import { askingHost } from '../../support/asking-host.ts';
import { temporaryFolder } from '../../support/sample-copy.ts';

const log = new URL('../../../sample-sessions/loose-logs/before-1.00-bar.csv', import.meta.url).pathname;

let place: ReturnType<typeof temporaryFolder>;
let asking: ReturnType<typeof askingHost>;
let folder: string;
let copy: string;
let minute = 0;

beforeEach(async () => {
  place = temporaryFolder();
  minute = 0;
  asking = askingHost(place.folder, () => minute++);
  const made = await asking.get('sessions.create', { name: 'Fenmoor', car: { mass_kg: 1320 } });
  folder = made.folder;
  copy = join(place.folder, 'on the other laptop');
});

afterEach(async () => {
  await asking.host.close();
  place.remove();
});

async function edits(at: string, notes: { session: string; entry: string }): Promise<void> {
  const { session } = await asking.get('sessions.open', { folder: at });
  const entryId = session.ledger[0]?.id ?? '';
  await asking.get('session.edit', {
    edits: [
      { type: 'session.note', note: notes.session },
      { type: 'entry.set', entryId, patch: { note: notes.entry } },
    ],
  });
}

/** The session and a copy of it, both with other notes; the copy has a log more. */
async function twoLaptops(): Promise<void> {
  await asking.get('sessions.close', {});
  cpSync(folder, copy, { recursive: true });
  await edits(copy, { session: 'theirs', entry: 'there' });
  await asking.get('runs.import', { path: log });
  await edits(folder, { session: 'mine', entry: 'here' });
}

describe('packing and unpacking', () => {
  it('shows the checksum at both ends, and takes every file along', async () => {
    await asking.get('session.edit', { edits: [{ type: 'session.note', note: 'windy' }] });
    const path = join(place.folder, 'stick.zip');
    const packed = await asking.get('session.pack', { path });
    expect(packed).toMatchObject({ path, sha256: sha256(readFileSync(path)) });
    const into = join(place.folder);
    const unpacked = await asking.get('sessions.unpack', { path, into });
    expect(unpacked).toMatchObject({ files: packed.files, checked: packed.files, sha256: packed.sha256 });
    expect((await asking.get('sessions.open', { folder: unpacked.folder })).session.note).toBe('windy');
  });

  it('goes beside the session where no place is named, and writes over nothing', async () => {
    const packed = await asking.get('session.pack', {});
    expect(packed.path).toBe(`${folder}.zip`);
    expect(await asking.codeOf('session.pack', {})).toBe('store/already-there');
    const named = await asking.get('session.pack', { path: join(place.folder, 'no ending') });
    expect(named.path).toBe(join(place.folder, 'no ending.zip'));
  });
});

describe('two copies of a session', () => {
  it.each(['folder', 'zip'])('come together from a %s; both values can be read and taken', async (form) => {
    await twoLaptops();
    let from = copy;
    if (form === 'zip') {
      await asking.get('sessions.open', { folder: copy });
      from = (await asking.get('session.pack', {})).path;
      rmSync(copy, { recursive: true });
      await asking.get('sessions.open', { folder });
    }
    const { report, snapshot } = await asking.get('session.merge', { path: from });
    expect(report.newRuns.map((r) => r.name)).toEqual(['before-1.00-bar.csv']);
    expect(snapshot.runs).toHaveLength(1);
    const said = (language: Language) => {
      const show = createShow(language, metricUnits);
      return report.conflicts.map((c) =>
        [conflictPlace(c, snapshot, show), conflictValue(c.mine, show), conflictValue(c.theirs, show)].join(
          ' | ',
        ),
      );
    };
    expect(said('en').sort()).toEqual(['Entry 0, Baseline: Note | here | there', 'Note | mine | theirs']);
    expect(said('de').sort()).toEqual([
      'Eintrag 0, Ausgangsstand: Notiz | here | there',
      'Notiz | mine | theirs',
    ]);
    expect(report.conflicts.map((c) => c.stands)).toEqual(['mine', 'mine']);

    const note = report.conflicts.find((c) => c.path === 'note');
    const choice = { record: note?.record ?? '', index: note?.index ?? -1 };
    const taken = await asking.get('merge.settle', { ...choice, take: 'theirs' });
    expect(taken.session.note).toBe('theirs');
    expect(taken.session.ledger[0]?.note).toBe('here');
    expect(taken.undoTitle).toBe('merge.settle');
    expect((await asking.get('session.undo', {})).session.note).toBe('mine');

    // It can still be settled after a new start.
    await asking.get('sessions.close', {});
    await asking.get('sessions.open', { folder });
    const { conflicts } = await asking.get('merge.list', {});
    expect(conflicts.map((c) => c.stands)).toEqual(['mine', 'mine']);
    expect((await asking.get('merge.settle', { ...choice, take: 'theirs' })).session.note).toBe('theirs');
    expect((await asking.get('merge.list', {})).conflicts.find((c) => c.path === 'note')?.stands).toBe(
      'theirs',
    );
  });

  it('a record that a stranger wrote is read as data: what does not fit is refused', async () => {
    await twoLaptops();
    const { report } = await asking.get('session.merge', { path: copy });
    const record = report.conflicts[0]?.record ?? '';
    const hostile = (conflict: object) => {
      const text = JSON.stringify({
        mergedAt: 'x',
        conflicts: [{ kind: 'value', base: 0, mine: 0, ...conflict }],
      });
      const name = `history/merge-20270314T120000Z-${sha256(text).slice(0, 12)}.json`;
      writeFileSync(join(folder, name), text);
      return { record: name, index: 0, take: 'theirs' as const };
    };
    const before = readFileSync(join(folder, 'session.json'), 'utf8');
    const ledger = hostile({ file: 'session.json', path: 'ledger', theirs: 'nothing' });
    expect(await asking.codeOf('merge.settle', ledger)).toBe('session/field-invalid');
    const outside = hostile({ file: '../../etc/passwd', path: 'x', theirs: 1 });
    expect(await asking.codeOf('merge.settle', outside)).toBe('session/conflict-gone');
    const nowhere = { record: '../../etc/passwd', index: 0, take: 'mine' as const };
    expect(await asking.codeOf('merge.settle', nowhere)).toBe('store/no-version');
    expect(await asking.codeOf('merge.settle', { record, index: 99, take: 'mine' })).toBe('store/no-version');
    expect(readFileSync(join(folder, 'session.json'), 'utf8')).toBe(before);
  });

  it('another session, a zip that is none and a place that is not there are refused in words', async () => {
    const other = await asking.get('sessions.create', { name: 'Other', car: { mass_kg: 900 } });
    await asking.get('sessions.open', { folder });
    expect(await asking.codeOf('session.merge', { path: other.folder })).toBe('store/other-session');
    writeFileSync(join(place.folder, 'no.zip'), 'PK');
    expect(await asking.codeOf('session.merge', { path: join(place.folder, 'no.zip') })).toBe(
      'store/not-a-zip',
    );
    expect(await asking.codeOf('session.merge', { path: join(place.folder, 'no') })).toBe('store/missing');
  });
});
