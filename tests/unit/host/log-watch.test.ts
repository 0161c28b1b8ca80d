import { appendFileSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { FolderWatch } from '../../../core/contract/index.ts';
import { askingHost } from '../../support/asking-host.ts';
import { temporaryFolder } from '../../support/sample-copy.ts';

const log = readFileSync(
  new URL('../../../sample-sessions/loose-logs/before-1.00-bar.csv', import.meta.url),
  'utf8',
);
const lines = log.split('\n');
const firstHalf = `${lines.slice(0, lines.length >> 1).join('\n')}\n`;
const rest = lines.slice(lines.length >> 1).join('\n');

let place: ReturnType<typeof temporaryFolder>;
let logs: string;
let asking: ReturnType<typeof askingHost>;
let entryId: string;

beforeEach(async () => {
  place = temporaryFolder();
  logs = join(place.folder, 'logs');
  mkdirSync(logs);
  asking = askingHost(place.folder);
  const opened = await asking.get('sessions.create', { name: 'Fenmoor', car: { mass_kg: 1320 } });
  entryId = opened.session.ledger[0]?.id ?? '';
});

afterEach(async () => {
  await asking.host.close();
  place.remove();
});

const told = () =>
  asking.events.flatMap((event) => (event.type === 'watch-changed' ? [event.watch] : [])) as FolderWatch[];
const runsOfEntry = async () =>
  (await asking.snapshot()).session.ledger.find((e) => e.id === entryId)?.runs.map((r) => r.runId) ?? [];
const until = (isSo: () => void | Promise<void>) => vi.waitFor(isSo, { timeout: 60_000, interval: 20 });

describe('watching a folder for the open session', () => {
  it('takes each log into the entry once it is whole, and tells every step', async () => {
    writeFileSync(join(logs, 'yesterday.csv'), log.replaceAll('5', '6'));
    const before = await runsOfEntry();
    const started = await asking.get('watch.start', { folder: logs, entryId });
    expect(started).toMatchObject({ folder: logs, entryId, takes: true, logs: [], problem: null });
    writeFileSync(join(logs, 'pull 1.csv'), firstHalf);
    await until(() => expect(told().at(-1)?.logs[0]?.state).toBe('growing'));
    appendFileSync(join(logs, 'pull 1.csv'), rest);
    await until(() => expect(told().at(-1)?.logs[0]?.state).toBe('taken'));
    const [line, ...others] = (await asking.get('watch.get', {}))?.logs ?? [];
    expect(others).toEqual([]);
    expect(line).toMatchObject({ name: 'pull 1.csv', isNew: true, replaces: null, problems: [] });
    expect(await runsOfEntry()).toEqual([...before, line?.runId]);
    const run = (await asking.snapshot()).runs.find((r) => r.record.id === line?.runId);
    expect(run?.pulls.length).toBeGreaterThan(0);
    expect(told().map((w) => w.logs[0]?.state)).toContain('complete');
  });

  it('a log that grew after a pause stands in for its shorter copy, which stays a run', async () => {
    await asking.get('watch.start', { folder: logs, entryId });
    writeFileSync(join(logs, 'pull 1.csv'), firstHalf);
    await until(() => expect(told().at(-1)?.logs[0]?.state).toBe('taken'));
    const shorter = told().at(-1)?.logs[0]?.runId ?? '';
    await asking.get('session.edit', {
      edits: [{ type: 'run.set', runId: shorter, patch: { note: 'gusty' } }],
    });
    appendFileSync(join(logs, 'pull 1.csv'), rest);
    await until(() => expect(told().at(-1)?.logs[0]).toMatchObject({ state: 'taken', replaces: shorter }));
    const longer = told().at(-1)?.logs[0]?.runId ?? '';
    const runs = await runsOfEntry();
    expect(runs).toContain(longer);
    expect(runs).not.toContain(shorter);
    const { runs: all } = await asking.snapshot();
    expect(all.map((r) => r.record.id)).toEqual(expect.arrayContaining([longer, shorter]));
    expect(all.find((r) => r.record.id === longer)?.record.note).toBe('gusty');
  });

  /** Writes two states of one file and says what stands in the entry behind the second. */
  const twoStates = async (first: string | Uint8Array, second: string | Uint8Array) => {
    const before = await runsOfEntry();
    await asking.get('watch.start', { folder: logs, entryId });
    const path = join(logs, 'pull 1.csv');
    writeFileSync(path, first);
    await until(() => expect(told().at(-1)?.logs[0]?.state).toBe('taken'));
    const earlier = told().at(-1)?.logs[0]?.runId ?? '';
    writeFileSync(path, second);
    await until(() => {
      expect(told().at(-1)?.logs[0]?.state).toBe('taken');
      expect(told().at(-1)?.logs[0]?.runId).not.toBe(earlier);
    });
    const later = told().at(-1)?.logs[0]?.runId ?? '';
    const added = (await runsOfEntry()).filter((id) => !before.includes(id));
    // The original of either stays in the session, as it was taken.
    expect((await asking.snapshot()).runs.map((r) => r.record.id)).toEqual(
      expect.arrayContaining([earlier, later]),
    );
    return added.map((id) => (id === later ? 'later' : 'earlier'));
  };
  const padded = (text: string, size: number) => {
    const bytes = new Uint8Array(size);
    bytes.set(new TextEncoder().encode(text));
    return bytes;
  };
  const whole = firstHalf + rest;

  it.each<[string, () => [string | Uint8Array, string | Uint8Array]]>([
    ['wrote its head anew at the end', () => [`Rows: 0000\n${firstHalf}`, `Rows: 1234\n${whole}`]],
    ['wrote its head anew and nothing else', () => [`Rows: 0000\n${whole}`, `Rows: 1234\n${whole}`]],
    [
      'wrote a longer head at the end',
      () => [`Rows: 0\n${firstHalf}`, `Rows: 1234\nDuration: 81.2\n${whole}`],
    ],
    ['wrote a longer head and nothing else', () => [`Rows: 0\n${whole}`, `Rows: 1234\n${whole}`]],
    [
      'wrote a shorter head at the end',
      () => [`Still recording, rows: 0\n${firstHalf}`, `Rows: 1234\n${whole}`],
    ],
    ['took its head away', () => [`Still recording\n${firstHalf}`, whole]],
    [
      'wrote a longer head and filled in zeros',
      () => [padded(`Rows: 0\n${firstHalf}`, 400_000), padded(`Rows: 1234\n${whole}`, 400_000)],
    ],
    ['filled in zeros laid down before', () => [padded(firstHalf, 400_000), padded(whole, 400_000)]],
    ['cut the zeros off at the end', () => [padded(firstHalf, 400_000), whole]],
    ['did all of that', () => [padded(`Rows: 0000\n${firstHalf}`, 400_000), `Rows: 1234\n${whole}`]],
  ])('a logger that %s counts no pull twice', async (_, states) => {
    expect(await twoStates(...states())).toEqual(['later']);
  });

  it.each<[string, () => [string, string]]>([
    [
      'has the same head and other rows',
      () => [`Rows: 1\n${firstHalf}`, `Rows: 1\n${whole.replaceAll('7', '6')}`],
    ],
    [
      'has a longer head and other rows from half way on',
      () => [
        `Rows: 1\n${whole}`,
        `Rows: 1234\n${firstHalf}${whole.slice(firstHalf.length).replaceAll('7', '6')}`,
      ],
    ],
    [
      'has a longer head and fewer rows',
      () => [`Rows: 1\n${whole}`, `Rows: 1234\n${lines[0]}\n${lines.slice(200).join('\n')}`],
    ],
    [
      'differs in one row',
      () => [firstHalf, whole.replace(lines[200] ?? '', (lines[201] ?? '').replace(/\d/, '9'))],
    ],
  ])('another drive under the same name that %s stands beside it', async (_, states) => {
    expect(await twoStates(...states())).toEqual(['earlier', 'later']);
  });

  it('a log that is cut short counts no pull twice, and its longer copy takes the place once it has grown', async () => {
    const before = await runsOfEntry();
    await asking.get('watch.start', { folder: logs, entryId });
    const path = join(logs, 'pull 1.csv');
    const taken = async (runs: number) => {
      await until(async () => {
        expect(told().at(-1)?.logs[0]?.state).toBe('taken');
        expect((await asking.snapshot()).runs).toHaveLength(runs);
      });
      return (await runsOfEntry()).filter((id) => !before.includes(id));
    };
    writeFileSync(path, whole);
    const first = await taken(1);
    expect(first).toHaveLength(1);
    writeFileSync(path, firstHalf);
    expect(await taken(2)).toEqual(first);
    writeFileSync(path, `${whole}${lines.at(-2)}\n`);
    const last = await taken(3);
    expect(last).toHaveLength(1);
    expect(last).not.toEqual(first);
  });

  it('another file under the same name is another run, beside the one before', async () => {
    await asking.get('watch.start', { folder: logs, entryId });
    writeFileSync(join(logs, 'log.csv'), log);
    await until(() => expect(told().at(-1)?.logs[0]?.state).toBe('taken'));
    const first = told().at(-1)?.logs[0]?.runId ?? '';
    writeFileSync(join(logs, 'log.csv'), log.replaceAll('7', '6'));
    await until(() => {
      expect(told().at(-1)?.logs[0]?.state).toBe('taken');
      expect(told().at(-1)?.logs[0]?.runId).not.toBe(first);
    });
    const runs = await runsOfEntry();
    expect(runs).toEqual(expect.arrayContaining([first, told().at(-1)?.logs[0]?.runId]));
  });

  it('only tells where it is asked to, and follows a new entry without losing what it saw', async () => {
    await asking.get('watch.start', { folder: logs, takes: false });
    writeFileSync(join(logs, 'a.csv'), log);
    await until(() => expect(told().at(-1)?.logs[0]?.state).toBe('complete'));
    expect((await asking.snapshot()).runs).toEqual([]);
    const again = await asking.get('watch.start', { folder: logs, entryId });
    expect(again).toMatchObject({ entryId, takes: true, logs: [{ name: 'a.csv' }] });
  });

  it('tells a file that is no log once and leaves it alone; one that becomes a log is taken then', async () => {
    await asking.get('watch.start', { folder: logs, entryId });
    const before = (await asking.snapshot()).runs.length;
    writeFileSync(join(logs, 'notes.txt'), 'Gusts from the left.\nTank half full.\n');
    writeFileSync(join(logs, 'pull 1.csv'), `${lines[0]}\n`);
    const states = () =>
      Object.fromEntries((told().at(-1)?.logs ?? []).map((one) => [one.name, one.state] as const));
    await until(() => expect(states()).toEqual({ 'notes.txt': 'refused', 'pull 1.csv': 'refused' }));
    const notes = told()
      .at(-1)
      ?.logs.find((one) => one.name === 'notes.txt');
    expect(notes).toMatchObject({
      runId: null,
      problems: [{ code: 'log/only-text', where: { file: 'notes.txt' } }],
    });
    writeFileSync(join(logs, 'pull 1.csv'), log);
    await until(() => expect(states()['pull 1.csv']).toBe('taken'));
    expect(
      told()
        .at(-1)
        ?.logs.find((one) => one.name === 'notes.txt'),
    ).toEqual(notes);
    expect((await asking.snapshot()).runs).toHaveLength(before + 1);
    expect(readFileSync(join(logs, 'notes.txt'), 'utf8')).toContain('half full');
  });

  it('tells what a log shows while it is still written', async () => {
    await asking.get('watch.start', { folder: logs, entryId });
    writeFileSync(join(logs, 'pull 1.csv'), `${firstHalf}12.3,`);
    await until(() => expect(told().at(-1)?.logs[0]?.soFar?.pulls).toBeGreaterThan(0));
    const growing = told()
      .flatMap((w) => w.logs)
      .findLast((one) => one.soFar !== null);
    expect(growing?.runId).toBeNull();
    expect(growing?.soFar?.pulls).toBeGreaterThan(0);
    expect(growing?.soFar?.peakPower).toBeGreaterThan(50_000);
    expect(growing?.soFar?.peakPower).toBeLessThan(300_000);
  });

  it('joins the newest kept entry of the moment where it follows the ledger', async () => {
    const started = await asking.get('watch.start', { folder: logs, follows: true });
    expect(started).toMatchObject({ entryId, follows: true });
    const entry = { id: 'more-boost', kind: 'boost' as const, createdAt: '2027-03-14T12:00:00.000Z' };
    await asking.get('session.edit', { edits: [{ type: 'entry.add', entry: { ...entry, title: 'More' } }] });
    writeFileSync(join(logs, 'pull 1.csv'), log);
    await until(() => expect(told().at(-1)?.logs[0]?.state).toBe('taken'));
    expect(told().at(-1)?.entryId).toBe('more-boost');
    const { session } = await asking.snapshot();
    expect(session.ledger.at(-1)?.runs).toHaveLength(1);
    expect(session.ledger[0]?.runs).toHaveLength(0);
  });

  it('tells when the folder goes and comes back', async () => {
    await asking.get('watch.start', { folder: logs });
    renameSync(logs, `${logs}-away`);
    await until(() => expect(told().at(-1)?.problem?.code).toBe('store/missing'));
    renameSync(`${logs}-away`, logs);
    await until(() => expect(told().at(-1)?.problem).toBeNull());
  });

  it('ends with the session, and refuses what cannot be watched', async () => {
    expect(await asking.codeOf('watch.start', { folder: join(logs, 'nowhere') })).toBe('store/missing');
    expect(await asking.codeOf('watch.start', { folder: logs, entryId: 'nobody' })).toBe('session/no-entry');
    expect(await asking.get('watch.get', {})).toBeNull();
    await asking.get('watch.start', { folder: logs });
    await asking.get('sessions.close', {});
    expect(await asking.get('watch.get', {})).toBeNull();
    expect(told().at(-1)).toBeNull();
    expect(await asking.codeOf('watch.start', { folder: logs })).toBe('contract/no-session');
  });
});
