import { createHash } from 'node:crypto';
import { basename, join } from 'node:path';
import { fail, ok, type Problem, type Result } from '../../core/result/index.ts';
import { type RunRecord, RunRecordSchema } from '../../core/session/index.ts';
import { CalledOff } from './called-off.ts';
import { attempt, problemOf } from './disk-problem.ts';
import { saveDocument } from './document.ts';
import { errorCode, type FileSystem, type Reader } from './file-system.ts';
import { FirstBytes, Unwanted, type WhyNot } from './first-bytes.ts';
import { ensureFolder } from './history.ts';
import { folderNames, placeIn, runFolder, runPlace, shownSource, sourceName, sourcePath } from './layout.ts';
import { type OpenSession, runOfHash, type StoredRun, whyNotWritable, writing } from './open-session.ts';
import { removeTree } from './recover.ts';
import { unfinishedNameFor, writeDurably } from './replace-file.ts';
import { slug } from './safe-name.ts';
import { isRunGone, makeDurable } from './save.ts';
import { setAside } from './set-aside.ts';
import { partsOf, sha256OfFile } from './sha256.ts';

/** A log on this machine, or one that arrives as bytes. */
export type LogSource =
  | { readonly path: string }
  | { readonly name: string; readonly content: Uint8Array | AsyncIterable<Uint8Array> };

/** What is known about a log before it was read; a copy of a run brings its whole record. */
export type ImportDetails = Partial<
  Omit<RunRecord, 'schemaVersion' | 'id' | 'name' | 'size_bytes' | 'sha256'>
>;

export type ImportedLog = {
  readonly record: RunRecord;
  /** The id of the run that holds the same bytes already; nothing was added then. */
  readonly duplicateOf: string | null;
  /** True where the log went back to the place of a lost or damaged copy. */
  readonly healed: boolean;
};

/** Hooks of a long import; each may be left out. */
export type ImportHooks = {
  /** Asked once with the first bytes of the file, `tellingBytes` or all of them: what speaks against taking it. */
  readonly whyNot?: WhyNot;
  /** Bytes copied so far. */
  readonly onCopied?: (bytes: number) => void;
  readonly isCancelled?: () => boolean;
};

/**
 * Copies a log byte for byte into the session and tells so only once it is durable. The original is only read.
 * The same bytes a second time are no second run: they are told as a duplicate, and heal a run whose own copy
 * was lost or damaged.
 *
 * Errors: what `whyNot` says; store/source-changing where the file grew or was rewritten meanwhile; store/missing;
 * store/source-unreadable where the disk of the log fails; store/read-only and its kin; store/upload-broken;
 * contract/cancelled; disk problems. Nothing of it stays in the session then.
 */
export async function importLog(
  open: OpenSession,
  source: LogSource,
  details: ImportDetails,
  now: string,
  hooks: ImportHooks = {},
): Promise<Result<ImportedLog>> {
  const { fs } = open.inner;
  const runs = join(open.folder, folderNames.runs);
  const staged = join(runs, unfinishedNameFor('import'));
  const name = nameOf(source);
  let isCommitted = false;
  try {
    return await attempt(open.folder, async () => {
      const problem = await whyNotWritable(open);
      if (problem) return fail(problem);
      await ensureFolder(runs, fs);
      await fs.makeFolder(staged);
      // A long upload must not keep edits waiting, so only the last step waits its turn.
      const copy = await copyInto(join(staged, sourceName), source, fs, { ...hooks, name });
      if (!copy.ok) return copy;
      if (hooks.isCancelled?.()) throw new CalledOff();
      const done = await writing(open, () => commit(open, staged, { ...details, name, ...copy.value }, now));
      isCommitted = done.ok && done.value.duplicateOf === null;
      return done;
    });
  } catch (error) {
    if (error instanceof Unwanted || error instanceof Unreadable) return fail(error.problem);
    if (error instanceof CalledOff) return fail({ code: 'contract/cancelled', facts: {} });
    if (error instanceof BrokenUpload) return fail({ code: 'store/upload-broken', facts: { name } });
    throw error;
  } finally {
    // Where this fails too, opening the session cleans up.
    if (!isCommitted) await removeTree(staged, fs).catch(() => undefined);
  }
}

/** The log could not be read: the disk it lies on may be another than that of the session. */
class Unreadable extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.code);
    this.problem = problem;
  }
}

/** Runs a step of reading the log; what its disk refuses is told of the log. */
async function reading<T>(path: string, step: () => Promise<T>): Promise<T> {
  try {
    return await step();
  } catch (error) {
    const problem = problemOf(error, path);
    if (!problem) throw error;
    const isGone = problem.code === 'store/folder-gone' || problem.code === 'store/disk-error';
    const code = errorCode(error) ?? '';
    throw new Unreadable(isGone ? { code: 'store/source-unreadable', facts: { path, code } } : problem);
  }
}

/** The bytes stopped coming: the sender's failure, not the disk's. */
class BrokenUpload extends Error {}

async function* guarded(content: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  try {
    yield* content;
  } catch (error) {
    throw new BrokenUpload('upload broke off', { cause: error });
  }
}

function nameOf(source: LogSource): string {
  // A browser's name is a stranger's text; it is kept for people and never used as a path.
  const name = 'path' in source ? basename(source.path) : basename(source.name.replaceAll('\\', '/'));
  return name.toWellFormed().slice(0, 1000) || 'log';
}

type NamedHooks = ImportHooks & { readonly name: string };
type Copy = { readonly sha256: string; readonly size_bytes: number };

async function copyInto(
  path: string,
  source: LogSource,
  fs: FileSystem,
  hooks: NamedHooks,
): Promise<Result<Copy>> {
  if (!('path' in source)) {
    const { content } = source;
    return ok(
      await hashedCopy(path, content instanceof Uint8Array ? [content] : guarded(content), fs, hooks),
    );
  }
  const reader = await reading(source.path, () => fs.openRead(source.path, { followLinks: true }));
  const wary: Reader = {
    ...reader,
    read: (into, position) => reading(source.path, () => reader.read(into, position)),
    state: () => reading(source.path, () => reader.state()),
  };
  try {
    const before = await wary.state();
    const copy = await hashedCopy(path, partsOf(wary), fs, hooks);
    const after = await wary.state();
    const isSteady = before.modified_ms === after.modified_ms && copy.size_bytes === after.size;
    if (!isSteady) return fail({ code: 'store/source-changing', facts: { name: basename(source.path) } });
    return ok(copy);
  } finally {
    await reader.close();
  }
}

async function hashedCopy(
  path: string,
  parts: Iterable<Uint8Array> | AsyncIterable<Uint8Array>,
  fs: FileSystem,
  hooks: NamedHooks,
): Promise<Copy> {
  const hash = createHash('sha256');
  let size_bytes = 0;
  const head = new FirstBytes(hooks.whyNot ?? null, hooks.name);
  async function* counted() {
    for await (const part of parts) {
      head.take(part);
      hash.update(part);
      size_bytes += part.length;
      hooks.onCopied?.(size_bytes);
      if (hooks.isCancelled?.()) throw new CalledOff();
      yield part;
    }
    head.end();
  }
  await writeDurably(path, counted(), fs);
  await fs.setReadOnly(path, true);
  return { sha256: hash.digest('hex'), size_bytes };
}

async function commit(
  open: OpenSession,
  staged: string,
  facts: Copy & ImportDetails & { readonly name: string },
  now: string,
): Promise<Result<ImportedLog>> {
  const { fs } = open.inner;
  const same = runOfHash(open, facts.sha256);
  if (same) return heal(open, same, staged, now);

  const id = await freeId(open, facts.name, facts.sha256);
  const record = RunRecordSchema.parse({ importedAt: now, ...facts, schemaVersion: 1, id });
  const saved = await saveDocument(
    placeIn(staged, '', 'run'),
    record,
    { fingerprint: null, revision: 0 },
    now,
    fs,
  );
  if (!saved.ok) return saved;
  await fs.rename(staged, runFolder(open.folder, id));
  // It stands from here on, also where the flush fails; the next that needs it flushes again.
  open.runs.set(id, { record, hasSource: true, saved: saved.value, isDurable: false });
  await makeDurable(open, id);
  return ok({ record, duplicateOf: null, healed: false });
}

/** Named after the file and its content, so that two copies of a session give one log one id. */
async function freeId(open: OpenSession, name: string, sha256: string): Promise<string> {
  const stem = slug(name.replace(/\.[^.]*$/, ''), 'log');
  for (let digits = 10; ; digits++) {
    const id = `${stem}-${sha256.slice(0, digits)}`;
    // A folder may stand there whose record could not be read.
    if (!open.runs.has(id) && (await open.inner.fs.stat(runFolder(open.folder, id))) === null) return id;
  }
}

/** The bytes are known: where the run's own copy is not what it should be, the new one takes its place. */
async function heal(
  open: OpenSession,
  run: StoredRun,
  staged: string,
  now: string,
): Promise<Result<ImportedLog>> {
  const { fs } = open.inner;
  const { id, sha256 } = run.record;
  const path = sourcePath(open.folder, id);
  const isThere = (await fs.stat(path)) !== null;
  const isWhole = isThere && (await sha256OfFile(path, fs)).sha256 === sha256;
  if (!isWhole) {
    // The folder may have been taken away as a whole: what was said of the run goes back with its log.
    const saved = (await isRunGone(open, id)) ? await laidDownAgain(open, run, now) : ok(run.saved);
    if (!saved.ok) return saved;
    if (isThere) await setAside(open.folder, shownSource(id), now, fs);
    await fs.rename(join(staged, sourceName), path);
    await fs.syncFolder(runFolder(open.folder, id));
    open.runs.set(id, { ...run, hasSource: true, saved: saved.value });
  }
  await makeDurable(open, id);
  return ok({ record: run.record, duplicateOf: id, healed: !isWhole });
}

async function laidDownAgain(open: OpenSession, run: StoredRun, now: string) {
  const { fs } = open.inner;
  const { id } = run.record;
  await ensureFolder(runFolder(open.folder, id), fs);
  await fs.syncFolder(join(open.folder, folderNames.runs));
  const { revision } = run.saved;
  return saveDocument(runPlace(open.folder, id), run.record, { fingerprint: null, revision }, now, fs);
}
