import { readdir, readFile, utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { unwrap } from '../../../core/result/index.ts';
import type { FileSystem } from '../../../electron/store/file-system.ts';
import { closeSession, nodeFileSystem, openSession, saveSession } from '../../../electron/store/index.ts';
import { takeLock } from '../../../electron/store/lock.ts';
import type { ProcessMark, ProcessView } from '../../../electron/store/process-view.ts';
import { nodeProcessView } from '../../../electron/store/process-view.ts';
import { moment, newSessionFolder, scratchFolder } from '../../support/store-session.ts';

/** A machine on which only the listed processes live. */
function machine(self: ProcessMark, living: Record<number, string | null> = {}): ProcessView {
  return {
    self: async () => self,
    look: async (pid) => {
      const started = living[pid];
      return started === undefined ? 'gone' : { started };
    },
  };
}
const laptop = (pid: number, started: string | null = '500'): ProcessMark => ({
  host: 'laptop',
  boot: 'b1',
  pid,
  started,
});
const take = (folder: string, view: ProcessView) => takeLock(folder, moment(1), nodeFileSystem, view);
const locksIn = async (folder: string) => (await readdir(folder)).filter((name) => name.endsWith('.lock'));

describe('two programs on one session', () => {
  it('the second opens for reading and is told who has it', async () => {
    const folder = await newSessionFolder();
    const first = unwrap(await openSession(folder, { now: moment(1) }));
    const second = unwrap(await openSession(folder, { now: moment(2) }));
    expect(first.readOnly).toBeNull();
    expect(second.readOnly).toMatchObject({
      code: 'store/locked',
      facts: { pid: process.pid, since: moment(1) },
    });
    const refused = await saveSession(second, { ...second.session, note: 'x' }, moment(3));
    expect(refused.ok ? '' : refused.problems[0].code).toBe('store/locked');
    await closeSession(second);
    expect((await saveSession(first, { ...first.session, note: 'y' }, moment(3))).ok).toBe(true);
    await closeSession(first);
    const third = unwrap(await openSession(folder, { now: moment(4) }));
    expect(third.readOnly).toBeNull();
    await closeSession(third);
    expect(await locksIn(folder)).toEqual([]);
  });

  it('of many that come at once, never two hold it, and one gets it when they try again', async () => {
    const folder = await scratchFolder();
    const view = machine(laptop(1), { 1: '500' });
    for (let round = 0; round < 10; round++) {
      const tried = await Promise.all(Array.from({ length: 8 }, () => take(folder, view)));
      const holders = tried.filter((t) => 'lock' in t);
      expect(holders.length).toBeLessThanOrEqual(1);
      for (const held of holders) await held.lock.release();
      expect(await locksIn(folder)).toEqual([]);
    }
    expect('lock' in (await take(folder, view))).toBe(true);
  });

  it('opened by three at once, a session opens for each, one may write, and none tells of a crash', async () => {
    for (let round = 0; round < 20; round++) {
      const folder = await newSessionFolder();
      const opened = (await Promise.all([1, 2, 3].map(() => openSession(folder, { now: moment(1) })))).map(
        unwrap,
      );
      expect(opened.filter((session) => session.readOnly === null)).toHaveLength(1);
      expect(opened.flatMap((session) => session.notices)).toEqual([]);
      for (const session of opened) await closeSession(session);
      expect(await locksIn(folder)).toEqual([]);
    }
  });

  it('a lock that another cleared away before it had its name is put down again', async () => {
    const folder = await scratchFolder();
    const view = machine(laptop(1), { 1: '500' });
    const clearing = (times: number): FileSystem => ({
      ...nodeFileSystem,
      async rename(from, to) {
        if (times-- > 0) await nodeFileSystem.removeFile(from);
        return nodeFileSystem.rename(from, to);
      },
    });
    const taken = await takeLock(folder, moment(1), clearing(2), view);
    expect('lock' in taken).toBe(true);
    if ('lock' in taken) await taken.lock.release();
    await expect(takeLock(folder, moment(1), clearing(Number.POSITIVE_INFINITY), view)).rejects.toThrow(
      'ESTALE',
    );
    expect(await readdir(folder)).toEqual([]);
    await expect(takeLock(join(folder, 'gone'), moment(1), nodeFileSystem, view)).rejects.toThrow('ENOENT');
  });

  it('a lock that this program is just giving up tells of nobody who died', async () => {
    const folder = await scratchFolder();
    const view = machine(laptop(1), { 1: '500' });
    let goOn = () => {};
    const slow: FileSystem = {
      ...nodeFileSystem,
      removeFile: async (path) => {
        await new Promise<void>((resolve) => {
          goOn = resolve;
        });
        return nodeFileSystem.removeFile(path);
      },
    };
    const first = await takeLock(folder, moment(1), slow, view);
    const released = 'lock' in first ? first.lock.release() : null;
    const second = await take(folder, view);
    expect(second).toMatchObject({ lock: { takenOver: [], wasLeft: true } });
    goOn();
    await released;
    expect('lock' in second && (await second.lock.isHeld())).toBe(true);
    expect(await locksIn(folder)).toHaveLength(1);
  });

  it('what was left by a crash and is cleared by another at the same moment keeps nobody out', async () => {
    const folder = await newSessionFolder();
    const left = '.unfinished-0123456789ab-session.json';
    await writeFile(join(folder, left), '{');
    const hasty: FileSystem = {
      ...nodeFileSystem,
      async removeFile(path) {
        if (path.endsWith(left)) await nodeFileSystem.removeFile(path);
        return nodeFileSystem.removeFile(path);
      },
    };
    const session = unwrap(await openSession(folder, { now: moment(1), fs: hasty }));
    expect(session.readOnly).toBeNull();
    expect(session.notices).toEqual([]);
    await closeSession(session);
  });
});

describe('a lock that was left behind', () => {
  async function leftBy(mark: object): Promise<string> {
    const folder = await scratchFolder();
    await writeFile(
      join(folder, '.open-0123456789abcdef.lock'),
      JSON.stringify({ ...mark, since: moment(0) }),
    );
    return folder;
  }

  it.each([
    ['its process is gone', laptop(77), machine(laptop(1))],
    ['its number belongs to another process now', laptop(77, '500'), machine(laptop(1), { 77: '900' })],
  ])('is taken over at once when %s', async (_, mark, view) => {
    const folder = await leftBy(mark);
    const taken = await take(folder, view);
    expect('lock' in taken ? taken.lock.takenOver : []).toMatchObject([{ pid: 77, since: moment(0) }]);
    expect(await locksIn(folder)).toHaveLength(1);
  });

  it('holds while its process lives', async () => {
    const folder = await leftBy(laptop(77));
    const taken = await take(folder, machine(laptop(1), { 77: '500' }));
    expect('heldBy' in taken ? taken.heldBy.pid : null).toBe(77);
  });

  it.each([
    ['another machine', { ...laptop(77), host: 'shop-pc' }, machine(laptop(1))],
    ['an earlier start of this machine', { ...laptop(77), boot: 'b0' }, machine(laptop(1))],
    ['a system that tells no starts', laptop(77, null), machine(laptop(1), { 77: null })],
  ])('of %s holds while it beats and falls when it has been silent', async (_, mark, view) => {
    const folder = await leftBy(mark);
    expect('heldBy' in (await take(folder, view))).toBe(true);
    const longAgo = new Date(Date.now() - 31_000);
    await utimes(join(folder, '.open-0123456789abcdef.lock'), longAgo, longAgo);
    expect('lock' in (await take(folder, view))).toBe(true);
  });

  it('torn by a power cut keeps nobody out', async () => {
    const folder = await scratchFolder();
    await writeFile(join(folder, '.open-0123456789abcdef.lock'), '');
    expect('lock' in (await take(folder, machine(laptop(1))))).toBe(true);
  });

  it('whose owner slept and was taken over: the sleeper notices and writes nothing more', async () => {
    const folder = await newSessionFolder();
    const sleeper = unwrap(
      await openSession(folder, { now: moment(1), view: machine({ ...laptop(5), host: 'shop-pc' }) }),
    );
    const [lock = ''] = await locksIn(folder);
    const longAgo = new Date(Date.now() - 31_000);
    await utimes(join(folder, lock), longAgo, longAgo);
    const other = unwrap(await openSession(folder, { now: moment(2), view: machine(laptop(1)) }));
    expect(other.readOnly).toBeNull();
    expect(other.notices).toMatchObject([{ code: 'store/lock-taken-over', facts: { host: 'shop-pc' } }]);
    const refused = await saveSession(sleeper, { ...sleeper.session, note: 'x' }, moment(3));
    expect(refused.ok ? '' : refused.problems[0].code).toBe('store/lock-lost');
    await closeSession(sleeper);
    expect((await saveSession(other, { ...other.session, note: 'y' }, moment(3))).ok).toBe(true);
    await closeSession(other);
  });
});

describe('this machine', () => {
  it('knows itself as alive and an unused number as gone', async () => {
    const self = await nodeProcessView.self();
    expect(self.pid).toBe(process.pid);
    expect(await nodeProcessView.look(process.pid)).toEqual({ started: self.started });
    const highest = Number(
      (await readFile('/proc/sys/kernel/pid_max', 'utf8').catch(() => '4194304')).trim(),
    );
    expect(await nodeProcessView.look(highest + 1)).toBe('gone');
  });

  it.runIf(process.platform === 'linux')('tells when a process started', async () => {
    const { boot, started } = await nodeProcessView.self();
    expect(boot).toMatch(/^[0-9a-f-]{36}$/);
    expect(Number(started)).toBeGreaterThan(0);
  });
});
