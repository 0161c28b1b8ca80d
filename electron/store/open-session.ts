import { join } from 'node:path';
import { fail, type Note, ok, type Problem, type Result } from '../../core/result/index.ts';
import { type RunRecord, readSession, type Session } from '../../core/session/index.ts';
import { attempt, problemOf } from './disk-problem.ts';
import { loadDocument, type Saved, saveDocument } from './document.ts';
import type { FileSystem } from './file-system.ts';
import { keepVersion, listIfThere, versionsOf } from './history.ts';
import { folderNames, sessionPlace } from './layout.ts';
import { loadRuns } from './load-runs.ts';
import { type Lock, takeLock } from './lock.ts';
import { nodeFileSystem } from './node-file-system.ts';
import { nodeProcessView, type ProcessView } from './process-view.ts';
import { finishImports, removeUnfinished, secondCopy, settle } from './recover.ts';

/** A run as it lies in the folder. */
export type StoredRun = {
  readonly record: RunRecord;
  /** Whether the log itself is there. Its content is checked when it is read. */
  readonly hasSource: boolean;
  readonly saved: Saved;
  /** False where the last flush of its import failed: it stands, but a power cut could still take it. */
  readonly isDurable: boolean;
};

/** A session folder in use. Only the functions of this folder change it. */
export type OpenSession = {
  readonly folder: string;
  /** Null where it may be written; else why not: another program holds it, or the disk does not allow it. */
  readonly readOnly: Problem | null;
  /** As last saved. */
  session: Session;
  readonly runs: Map<string, StoredRun>;
  /** What opening found and did. */
  readonly notices: readonly Note[];
  readonly inner: {
    readonly fs: FileSystem;
    readonly lock: Lock | null;
    saved: Saved;
    /** See SaveOptions. */
    readonly tried: Set<string>;
    isClosed: boolean;
    /** Writers wait for each other here. */
    queue: Promise<unknown>;
  };
};

export type OpenOptions = {
  /** The present moment, ISO 8601 in UTC; it dates what recovery sets aside. */
  readonly now: string;
  /** Only look: takes no lock and repairs nothing. */
  readonly readOnly?: boolean;
  readonly fs?: FileSystem;
  readonly view?: ProcessView;
};

/**
 * Opens a session folder and brings it into order: interrupted imports are finished or removed, damaged files
 * set aside and replaced from history, an older format migrated with its original kept. Whatever was done is in
 * `notices`. Where another program has it, or the folder cannot be written, it opens for reading and `readOnly`
 * says why.
 *
 * Errors: store/not-a-session, store/damaged, session/newer-version, disk problems.
 */
export function openSession(folder: string, options: OpenOptions): Promise<Result<OpenSession>> {
  const { now, fs = nodeFileSystem, view = nodeProcessView } = options;
  return attempt(folder, async () => {
    // Before the lock is put down: a folder that is no session must stay as it is.
    const isSession = await looksLikeSession(folder, fs);
    if (!isSession) return fail({ code: 'store/not-a-session', facts: { path: folder } });
    const taken = options.readOnly
      ? ({ problem: { code: 'store/read-only', facts: { folder } } } as const)
      : await takeIfPossible(folder, now, fs, view);
    const lock = 'lock' in taken ? taken.lock : null;
    const readOnly = 'problem' in taken ? taken.problem : null;
    try {
      const opened = await readAll(folder, lock, readOnly, now, fs);
      if (!opened.ok) await lock?.release();
      return opened;
    } catch (error) {
      // The lock of a session that did not open would keep everybody out.
      await lock?.release().catch(() => undefined);
      throw error;
    }
  });
}

async function looksLikeSession(folder: string, fs: FileSystem): Promise<boolean> {
  if ((await fs.stat(folder))?.kind === 'file') return false;
  const names = new Set((await fs.list(folder)).map((entry) => entry.name));
  if (names.has('session.json')) return true;
  return names.has(folderNames.history) && (await versionsOf(sessionPlace(folder), fs)).length > 0;
}

/** Refusals of writing on a disk that can be read all the same. */
const stillReadable = new Set<Problem['code']>([
  'store/not-allowed',
  'store/disk-read-only',
  'store/disk-full',
]);

async function takeIfPossible(
  folder: string,
  now: string,
  fs: FileSystem,
  view: ProcessView,
): Promise<{ lock: Lock } | { problem: Problem }> {
  try {
    const taken = await takeLock(folder, now, fs, view);
    if ('lock' in taken) return taken;
    const { host, pid, since } = taken.heldBy;
    return { problem: { code: 'store/locked', facts: { host, pid, since } } };
  } catch (error) {
    // A full or write-protected disk still lets us look.
    const problem = problemOf(error, folder);
    if (problem && stillReadable.has(problem.code)) return { problem };
    throw error;
  }
}

async function readAll(
  folder: string,
  lock: Lock | null,
  readOnly: Problem | null,
  now: string,
  fs: FileSystem,
): Promise<Result<OpenSession>> {
  const notices: Note[] = (lock?.takenOver ?? []).map(({ host, pid, since }) => ({
    code: 'store/lock-taken-over',
    facts: { host, pid, since },
  }));
  if (lock) {
    await removeUnfinished(folder, notices, fs);
    await finishImports(folder, notices, fs);
    await flushNames(folder, fs);
  }

  const place = sessionPlace(folder);
  const loaded = await loadDocument(place, (json) => readSession(json, place.shown), fs);
  if (!loaded.ok) return loaded;
  const { session, migratedFrom } = loaded.value.value;
  let saved = await settle(folder, place, loaded.value, lock !== null, now, notices, fs);
  // A copy of the folder made without its history.
  if (lock && loaded.value.condition === 'sound') saved = await secondCopy(place, loaded.value, now, fs);

  if (lock && migratedFrom !== null) {
    const original = await keepVersion(
      place,
      loaded.value.bytes,
      { revision: saved.revision, savedAt: now, isOriginal: true },
      fs,
    );
    const migrated = await saveDocument(place, session, saved, now, fs);
    if (!migrated.ok) return migrated;
    saved = migrated.value;
    notices.push({
      code: 'store/migrated',
      facts: { from: migratedFrom, to: session.schemaVersion, original: `history/${original}` },
    });
  }

  // A writer that closed properly leaves nothing to look for.
  const how = { mayWrite: lock !== null, afterCrash: notices.length > 0 || lock?.wasLeft === true };
  const runs = await loadRuns(folder, how, now, notices, fs);
  for (const file of missingRuns(session, runs)) {
    notices.push({ code: 'store/file-missing', facts: { file, repair: 'import-again' } });
  }
  const inner = { fs, lock, saved, tried: new Set<string>(), isClosed: false, queue: Promise.resolve() };
  return ok({ folder, readOnly, session, runs, notices, inner });
}

/** The run whose log has this SHA-256. */
export function runOfHash(open: OpenSession, sha256: string): StoredRun | undefined {
  return [...open.runs.values()].find((run) => run.record.sha256 === sha256);
}

/** Folders of runs that the ledger names and nobody can find. */
export function missingRuns(session: Session, known: { has(runId: string): boolean }): string[] {
  const wanted = new Set(session.ledger.flatMap((entry) => entry.runs.map((run) => run.runId)));
  return [...wanted].filter((id) => !known.has(id)).map((id) => `${folderNames.runs}/${id}`);
}

/**
 * The program before this one may have failed in its last flush: what stands is then shown, and counted on, but
 * a power cut could still take its name.
 */
async function flushNames(folder: string, fs: FileSystem): Promise<void> {
  // Asked together, a journal flushes once.
  await Promise.all(
    ['', folderNames.runs, folderNames.history].map(async (name) => {
      const at = join(folder, name);
      if ((await fs.stat(at))?.kind === 'folder') await fs.syncFolder(at);
    }),
  );
}

/** Waits for what is being written and gives the folder free. Closing twice does nothing. */
export async function closeSession(open: OpenSession): Promise<Result<void>> {
  const { inner } = open;
  if (inner.isClosed) return ok(undefined);
  inner.isClosed = true;
  return attempt(open.folder, async () => {
    await inner.queue;
    await inner.lock?.release();
    return ok(undefined);
  });
}

/**
 * Runs a writer when those before it are done, where the session may be written and its lock is still held.
 *
 * Errors: why it is read-only, store/closed, store/lock-lost, disk problems.
 */
export function writing<T>(open: OpenSession, action: () => Promise<Result<T>>): Promise<Result<T>> {
  const { inner } = open;
  const run = inner.queue.then(() =>
    attempt(open.folder, async () => {
      const problem = await whyNotWritable(open);
      return problem ? fail(problem) : action();
    }),
  );
  inner.queue = run.catch(() => undefined);
  return run;
}

/** Null where the session may be written now. */
export async function whyNotWritable(open: OpenSession): Promise<Problem | null> {
  if (open.readOnly) return open.readOnly;
  if (open.inner.isClosed) return { code: 'store/closed', facts: { folder: open.folder } };
  if (await open.inner.lock?.isHeld()) return null;
  // The lock also goes when the whole folder does, or its share.
  const isThere = (await listIfThere(open.folder, open.inner.fs)).length > 0;
  return isThere
    ? { code: 'store/lock-lost', facts: {} }
    : { code: 'store/folder-gone', facts: { path: open.folder } };
}
