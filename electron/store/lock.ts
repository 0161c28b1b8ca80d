import { randomBytes } from 'node:crypto';
import { basename, dirname, join } from 'node:path';
import { z } from 'zod';
import { diskError, errorCode, type FileSystem, removeIfThere } from './file-system.ts';
import type { ProcessMark, ProcessView } from './process-view.ts';
import { placeFile } from './replace-file.ts';

/** A holder shows every 5 s that it lives; one silent for 30 s on another machine is taken for dead. */
const beat_ms = 5_000;
const silence_ms = 30_000;
const attempts = 5;

const lockName = /^\.open-[0-9a-f]{16}\.lock$/;

const HolderSchema = z.object({
  host: z.string(),
  boot: z.string().nullable(),
  pid: z.number(),
  started: z.string().nullable(),
  since: z.string(),
});
/** Who has a session open for writing. */
export type Holder = ProcessMark & { readonly since: string };

export type Lock = {
  /** Holders that had died without closing; their locks were removed. */
  readonly takenOver: readonly Holder[];
  /** Whether any lock lay there that its holder had not removed: what it wrote last may be unfinished. */
  readonly wasLeft: boolean;
  /** False where another program took the session over, say while this machine slept. */
  readonly isHeld: () => Promise<boolean>;
  readonly release: () => Promise<void>;
};

export function isLockFile(name: string): boolean {
  return lockName.test(name);
}

/**
 * Takes a session folder for writing, or tells who has it.
 *
 * Each program puts down a file of its own and then looks for others. Of two that come at the same moment at
 * least the later one sees the other and withdraws, so two never hold it; a dead holder's file is removed by its
 * unique name, so that no living lock can be removed by mistake.
 *
 * Errors: thrown as by FileSystem where the folder cannot be written.
 */
export async function takeLock(
  folder: string,
  now: string,
  fs: FileSystem,
  view: ProcessView,
): Promise<{ lock: Lock } | { heldBy: Holder }> {
  const holder: Holder = { ...(await view.self()), since: now };
  const seen = new Set<string>();
  for (let attempt = 1; ; attempt++) {
    const name = `.open-${randomBytes(8).toString('hex')}.lock`;
    const path = join(folder, name);
    const others = await putDown(path, holder, fs, view);
    if (others === 'cleared') {
      if (attempt === attempts) throw diskError('ESTALE', folder);
      continue;
    }
    const { living, dead } = others;
    const [other] = living;
    if (!other) {
      const takenOver = dead.flatMap((d) => (d.holder ? [d.holder] : []));
      return { lock: holdLock(path, { takenOver, wasLeft: dead.length > 0 }, fs) };
    }
    await giveUp(path, fs);
    // One that is still there did not withdraw. Else both came at the same moment: the shorter wait wins.
    if (seen.has(other.name) || attempt === attempts) return { heldBy: other.holder };
    for (const one of living) seen.add(one.name);
    await new Promise((resolve) => setTimeout(resolve, Math.random() * 20 * attempt));
  }
}

/**
 * Writes the own lock, looks for others and removes those of the dead. Cleared: another program opened the
 * session meanwhile and took the unfinished lock for what a crash had left.
 */
async function putDown(
  path: string,
  holder: Holder,
  fs: FileSystem,
  view: ProcessView,
): Promise<Others | 'cleared'> {
  const folder = dirname(path);
  try {
    await placeFile(path, `${JSON.stringify(holder)}\n`, fs);
    const mine = (await fs.stat(path))?.modified_ms ?? 0;
    const others = await otherHolders(folder, basename(path), holder, mine, fs, view);
    for (const { name } of others.dead) await removeIfThere(join(folder, name), fs);
    return others;
  } catch (error) {
    await giveUp(path, fs);
    if (errorCode(error) === 'ENOENT' && (await fs.stat(folder))?.kind === 'folder') return 'cleared';
    throw error;
  }
}

/** Who has the folder open for writing, without trying to take it. */
export async function lockHolder(folder: string, fs: FileSystem, view: ProcessView): Promise<Holder | null> {
  const self: Holder = { ...(await view.self()), since: '' };
  return (await otherHolders(folder, '', self, Date.now(), fs, view)).living[0]?.holder ?? null;
}

type Living = { readonly name: string; readonly holder: Holder };
/** Null holder: the lock was torn, or this process gave it up itself; nobody died. */
type Dead = { readonly name: string; readonly holder: Holder | null };
type Others = { readonly living: readonly Living[]; readonly dead: readonly Dead[] };

/** Locks that this process gave up while the disk did not let it remove them. They count as dead. */
const givenUp = new Set<string>();

async function otherHolders(
  folder: string,
  ownName: string,
  self: Holder,
  now_ms: number,
  fs: FileSystem,
  view: ProcessView,
): Promise<Others> {
  const living: Living[] = [];
  const dead: Dead[] = [];
  for (const { name, kind } of await fs.list(folder)) {
    if (!isLockFile(name) || name === ownName || kind !== 'file') continue;
    const path = join(folder, name);
    const holder = await readHolder(path, fs);
    if (holder === 'gone') continue;
    if (givenUp.has(path)) dead.push({ name, holder: null });
    else if (holder && (await isAlive(holder, path, self, now_ms, fs, view))) living.push({ name, holder });
    else dead.push({ name, holder });
  }
  return { living, dead };
}

async function readHolder(path: string, fs: FileSystem): Promise<Holder | null | 'gone'> {
  try {
    const text = new TextDecoder().decode(await fs.readFile(path, 10_000));
    return HolderSchema.parse(JSON.parse(text));
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return 'gone';
    // A lock is written in one step; one that cannot be read was torn by a power cut, and its holder with it.
    return null;
  }
}

async function isAlive(
  holder: Holder,
  path: string,
  self: Holder,
  now_ms: number,
  fs: FileSystem,
  view: ProcessView,
): Promise<boolean> {
  const isHere = holder.host === self.host && holder.boot === self.boot;
  if (isHere) {
    const found = await view.look(holder.pid);
    if (found === 'gone') return false;
    // Numbers are used again: the same number with another start is another process.
    if (found.started !== null && holder.started !== null) return found.started === holder.started;
  }
  // Another machine, or a system that does not tell starts: only the beat is left. Both dates are the disk's own.
  const beat = (await fs.stat(path))?.modified_ms;
  return beat !== undefined && now_ms - beat < silence_ms;
}

function holdLock(path: string, found: Pick<Lock, 'takenOver' | 'wasLeft'>, fs: FileSystem): Lock {
  const timer = setInterval(() => {
    fs.touch(path).catch(() => undefined);
  }, beat_ms);
  // A lock must not keep a finished program running.
  timer.unref();
  return {
    ...found,
    isHeld: async () => (await fs.stat(path)) !== null,
    async release() {
      clearInterval(timer);
      await giveUp(path, fs);
    },
  };
}

/** Removes an own lock, now or, where the disk does not allow it, as soon as it does. */
async function giveUp(path: string, fs: FileSystem): Promise<void> {
  const remove = async () => {
    await removeIfThere(path, fs);
    // With the whole folder gone, share and all, it may come back and the lock with it.
    if ((await fs.stat(dirname(path))) === null) throw diskError('ENOENT', path);
  };
  givenUp.add(path);
  try {
    await remove();
  } catch {
    const timer = setInterval(() => {
      remove().then(
        () => clearInterval(timer),
        () => undefined,
      );
    }, beat_ms);
    timer.unref();
  }
}
