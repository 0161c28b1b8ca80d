import { createReadStream, existsSync, readdirSync, rmSync, symlinkSync } from 'node:fs';
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
import { type Result, unwrap } from '../../../core/result/index.ts';
import { createHost, preferencesInMemory } from '../../../electron/host/index.ts';
import { sampleCopy, temporaryFolder } from '../../support/sample-copy.ts';

const loose = new URL('../../../sample-sessions/loose-logs/before-1.00-bar.csv', import.meta.url).pathname;
const context: RequestContext = { requestId: 't', signal: { aborted: false }, progress: () => undefined };

let place: ReturnType<typeof temporaryFolder>;
let folder: string;
let host: HostPort;
let nextId = 0;

const makeHost = () =>
  createHost({
    version: '0.0.0',
    shell: 'web',
    sessionsFolder: place.folder,
    sampleFolder: null,
    preferences: preferencesInMemory(),
    now: () => '2027-03-14T12:00:00.000Z',
    newId: () => `id-${nextId++}`,
  });

function ask<N extends RequestName>(
  name: N,
  input: RequestInput<N>,
  of: HostPort = host,
): Promise<Result<RequestOutput<N>>> {
  return of.handle(name, input, context) as Promise<Result<RequestOutput<N>>>;
}
const open = async (at: string, of: HostPort = host) =>
  unwrap(await ask('sessions.open', { folder: at }, of));
const rename = (name: string, of: HostPort = host) =>
  ask('session.edit', { edits: [{ type: 'session.rename', name }] }, of);

beforeEach(() => {
  place = temporaryFolder();
  folder = sampleCopy(place.folder);
  host = makeHost();
});

afterEach(async () => {
  await host.close();
  place.remove();
});

describe('a session that is open stays writable', () => {
  it.each<[string, () => string]>([
    ['with a stroke at its end', () => `${folder}/`],
    ['over a way around', () => `${join(folder, 'runs', '..', '.')}/.`],
    [
      'over a link',
      () => {
        symlinkSync(folder, join(place.folder, 'link'));
        return join(place.folder, 'link');
      },
    ],
  ])('opened again %s', async (_, again) => {
    await open(folder);
    await rename('First');
    const snapshot = await open(again());
    expect(snapshot).toMatchObject({ folder, readOnly: null, undoTitle: 'session.rename' });
    expect(readdirSync(folder).filter((n) => n.endsWith('.lock'))).toHaveLength(1);
  });

  it('opened by two windows at the same moment', async () => {
    const both = await Promise.all([1, 2, 3].map(() => open(folder)));
    expect(both.map((s) => s.readOnly)).toEqual([null, null, null]);
    expect((await rename('Both')).ok).toBe(true);
  });
});

describe('two windows of one host', () => {
  const heard: HostEvent[] = [];
  let other: string;
  beforeEach(async () => {
    other = sampleCopy(join(place.folder, 'other'));
    heard.length = 0;
    host.subscribe((event) => heard.push(event));
  });
  const revisions = () => heard.flatMap((e) => (e.type === 'session-changed' ? [e.revision] : []));

  it('hear of an edit, of another session and of the end, each under a number of its own', async () => {
    const first = await open(folder);
    const edited = unwrap(await rename('Edited'));
    const second = await open(other);
    unwrap(await ask('sessions.close', {}));
    const back = await open(folder);
    expect(revisions()).toHaveLength(5);
    expect(new Set(revisions()).size).toBe(5);
    const shown = [first, edited, second, back].map((s) => s.revision);
    expect(shown).toEqual([...shown].sort((a, b) => a - b));
    expect(revisions()).toEqual(expect.arrayContaining(shown));
  });

  it('an edit meant for a session that is not open any more is refused with both folders', async () => {
    await open(folder);
    await open(other);
    const edits = [{ type: 'session.rename', name: 'Meant for the first' }] as const;
    const refused = { problems: [{ code: 'contract/other-session', facts: { asked: folder, open: other } }] };
    expect(await ask('session.edit', { edits: [...edits], folder })).toMatchObject(refused);
    expect(await ask('session.undo', { folder })).toMatchObject(refused);
    expect(await ask('session.redo', { folder })).toMatchObject(refused);
    expect(unwrap(await ask('session.get', {}))?.session.name).not.toBe('Meant for the first');
    expect((await ask('session.edit', { edits: [...edits], folder: other })).ok).toBe(true);
  });

  it('a log meant for a session that is not open any more is refused, and nothing of it is kept', async () => {
    await open(folder);
    const { runs } = await open(other);
    const refused = { problems: [{ code: 'contract/other-session', facts: { asked: folder, open: other } }] };
    expect(await ask('runs.import', { path: loose, folder })).toMatchObject(refused);
    const bytes = () => createReadStream(loose);
    const meta = { name: 'before.csv', entryId: null };
    expect(await host.upload({ ...meta, folder }, bytes(), context)).toMatchObject(refused);
    expect(unwrap(await ask('session.get', {}))?.runs).toHaveLength(runs.length);
    expect((await host.upload({ ...meta, folder: other }, bytes(), context)).ok).toBe(true);
    expect(unwrap(await ask('session.get', {}))?.runs).toHaveLength(runs.length + 1);
  });

  it('a watch, an earlier version and a copy meant for a session that is not open any more are refused', async () => {
    await open(folder);
    unwrap(await rename('Renamed'));
    const [version] = unwrap(await ask('history.list', {})).versions;
    await open(other);
    unwrap(await ask('watch.start', { folder: place.folder, takes: false, session: other }));
    const before = unwrap(await ask('session.get', {}));
    const refused = { problems: [{ code: 'contract/other-session', facts: { asked: folder, open: other } }] };
    const zip = join(place.folder, 'meant.zip');
    expect(await ask('watch.start', { folder: place.folder, session: folder })).toMatchObject(refused);
    expect(await ask('watch.stop', { session: folder })).toMatchObject(refused);
    expect(await ask('history.restore', { file: version?.file ?? '', folder })).toMatchObject(refused);
    expect(await ask('session.pack', { path: zip, folder })).toMatchObject(refused);
    expect(await ask('session.merge', { path: folder, folder })).toMatchObject(refused);
    expect(await ask('merge.settle', { record: 'x', index: 0, take: 'mine', folder })).toMatchObject(refused);
    expect(existsSync(zip)).toBe(false);
    expect(unwrap(await ask('session.get', {}))).toEqual(before);
    expect(unwrap(await ask('watch.get', {}))).toMatchObject({ takes: false });
    expect((await ask('session.pack', { path: zip, folder: other })).ok).toBe(true);
    expect((await ask('watch.stop', { session: other })).ok).toBe(true);
    expect(unwrap(await ask('watch.get', {}))).toBeNull();
  });

  it('share one undo: the last edit goes, whoever made it', async () => {
    const { session } = await open(folder);
    await rename('One');
    await rename('Two');
    expect(unwrap(await ask('session.undo', { folder })).session.name).toBe('One');
    expect(unwrap(await ask('session.undo', { folder })).session.name).toBe(session.name);
  });

  it('import one log at the same moment as one run', async () => {
    const before = (await open(folder)).runs.length;
    const both = await Promise.all([1, 2].map(() => ask('runs.import', { path: loose, entryId: null })));
    const [one, two] = both.map((r) => unwrap(r));
    expect(one?.run.record.id).toBe(two?.run.record.id);
    expect([one, two].filter((r) => r?.duplicateOf === null)).toHaveLength(1);
    const runs = unwrap(await ask('session.get', {}))?.runs ?? [];
    expect(runs).toHaveLength(before + 1);
    expect(readdirSync(join(folder, 'runs'))).toHaveLength(runs.length);
  });
});

describe('two hosts on one session', () => {
  let second: HostPort;
  beforeEach(() => {
    second = makeHost();
  });
  afterEach(() => second.close());

  it('at the same moment: one writes, the other only looks and says who writes', async () => {
    const both = await Promise.all([open(folder), open(folder, second)]);
    expect(both.filter((s) => s.readOnly === null)).toHaveLength(1);
    const reader = both[0]?.readOnly ? host : second;
    const locked = { problems: [{ code: 'store/locked' }] };
    expect(await rename('No', reader)).toMatchObject(locked);
    expect(await ask('runs.import', { path: loose, entryId: null }, reader)).toMatchObject(locked);
  });

  it('the one that looks sees what was written since, and writes once the other has closed, by opening again', async () => {
    await open(folder);
    expect((await open(folder, second)).readOnly?.code).toBe('store/locked');
    await rename('Written');
    const again = await open(folder, second);
    expect(again).toMatchObject({ session: { name: 'Written' }, readOnly: { code: 'store/locked' } });
    await ask('sessions.close', {});
    expect((await open(folder, second)).readOnly).toBeNull();
    expect(unwrap(await rename('Second', second)).session.name).toBe('Second');
    expect((await open(folder)).session.name).toBe('Second');
  });

  it('one whose lock was taken away says so, and writes again once the session is opened again', async () => {
    await open(folder);
    const lock = readdirSync(folder).find((n) => n.endsWith('.lock')) ?? '';
    rmSync(join(folder, lock));
    expect(await rename('Lost')).toMatchObject({ problems: [{ code: 'store/lock-lost' }] });
    expect((await open(folder)).readOnly).toBeNull();
    expect((await rename('Found')).ok).toBe(true);
  });
});
