import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { askingHost } from '../../support/asking-host.ts';
import { temporaryFolder } from '../../support/sample-copy.ts';

let place: ReturnType<typeof temporaryFolder>;
let asking: ReturnType<typeof askingHost>;
let folder: string;
let minute = 0;

beforeEach(async () => {
  place = temporaryFolder();
  minute = 0;
  asking = askingHost(place.folder, () => minute++);
  const made = await asking.get('sessions.create', { name: 'Fenmoor', car: { mass_kg: 1320 } });
  folder = made.folder;
  for (const note of ['one', 'two', 'three']) {
    await asking.get('session.edit', { edits: [{ type: 'session.note', note }] });
  }
});

afterEach(async () => {
  await asking.host.close();
  place.remove();
});

const onDisk = () => JSON.parse(readFileSync(join(folder, 'session.json'), 'utf8'));
const list = async () => (await asking.get('history.list', {})).versions;

describe('earlier versions of a session', () => {
  it('are listed, the newest first, each with what it changed', async () => {
    const versions = await list();
    expect(versions.length).toBeGreaterThanOrEqual(4);
    expect(versions[0]).toMatchObject({ source: 'history', isCurrent: true, unusable: null });
    expect(versions.slice(0, 3).map((v) => v.changed)).toEqual([['note'], ['note'], ['note']]);
    expect(versions.filter((v) => v.isCurrent)).toHaveLength(1);
    const revisions = versions.map((v) => v.revision ?? 0);
    expect(revisions).toEqual([...revisions].sort((a, b) => b - a));
  });

  it('can be looked at without a change to anything', async () => {
    const before = [readFileSync(join(folder, 'session.json')), readdirSync(join(folder, 'history'))];
    const { file } = (await list())[2] ?? { file: '' };
    const read = await asking.get('history.read', { file });
    expect(read.session.note).toBe('one');
    expect(read.differs).toEqual(['note']);
    expect(read.missingRuns).toEqual([]);
    expect([readFileSync(join(folder, 'session.json')), readdirSync(join(folder, 'history'))]).toEqual(
      before,
    );
  });

  it('come back as an edit that undo takes back and redo makes again', async () => {
    const { file } = (await list())[2] ?? { file: '' };
    const restored = await asking.get('history.restore', { file });
    expect(restored.session.note).toBe('one');
    expect(restored.undoTitle).toBe('history.restore');
    expect(onDisk().note).toBe('one');
    expect((await list()).map((v) => v.changed).length).toBeGreaterThan(4);
    await asking.get('session.undo', {});
    expect(onDisk().note).toBe('three');
    await asking.get('session.redo', {});
    expect(onDisk().note).toBe('one');
  });

  it('a run that was imported since stays in the folder', async () => {
    const { file } = (await list())[2] ?? { file: '' };
    const path = new URL('../../../sample-sessions/loose-logs/before-1.00-bar.csv', import.meta.url).pathname;
    const { run } = await asking.get('runs.import', { path });
    const restored = await asking.get('history.restore', { file });
    expect(restored.runs.some((r) => r.record.id === run.record.id)).toBe(true);
  });

  it('a file that was set aside can be taken after all, once it is shown to fit', async () => {
    await asking.get('sessions.close', {});
    const path = join(folder, 'session.json');
    // One letter by hand, one bit in storage: by the bytes alone nobody can tell the two.
    writeFileSync(path, readFileSync(path, 'utf8').replace('"note": "three"', '"note": "thrde"'));
    const opened = await asking.get('sessions.open', { folder });
    expect(opened.session.note).toBe('three');
    expect(opened.notices.map((n) => n.code)).toContain('store/restored');
    const aside = (await list()).find((v) => v.source === 'set-aside');
    expect(aside).toMatchObject({ revision: null, unusable: null });
    expect((await asking.get('history.read', { file: aside?.file ?? '' })).differs).toEqual(['note']);
    const taken = await asking.get('history.restore', { file: aside?.file ?? '' });
    expect(taken.session.note).toBe('thrde');
  });

  it('a damaged one, a newer one and one that does not fit are listed and refused', async () => {
    const at = join(folder, 'history');
    const first = readdirSync(at).find((name) => name.startsWith('session-r')) ?? '';
    writeFileSync(join(at, first), 'torn');
    mkdirSync(join(folder, 'set-aside'));
    const aside = (n: number) => join(folder, 'set-aside', `20270314T10220${n}Z-session.json`);
    writeFileSync(aside(1), '{"schemaVersion": 99}');
    writeFileSync(aside(2), '{"schemaVersion": 1, "id": "x"}');
    const bad = (await list()).filter((v) => v.unusable !== null);
    expect(bad.map((v) => v.unusable).sort()).toEqual(['damaged', 'invalid', 'newer']);
    for (const { file } of bad) {
      expect(await asking.codeOf('history.restore', { file })).toBe('store/version-unusable');
    }
  });

  it.each(['../../etc/passwd', 'session.json', 'history/../session.json', ''])(
    'no other file is opened by name: %s',
    async (file) => {
      expect(await asking.codeOf('history.read', { file })).toBe('store/no-version');
    },
  );
});
