import { join } from 'node:path';
import { fail, type Note, ok, type Result } from '../../core/result/index.ts';
import {
  mergeJson,
  RunRecordSchema,
  readSession,
  type Session,
  SessionSchema,
} from '../../core/session/index.ts';
import { attempt } from './disk-problem.ts';
import type { FileSystem } from './file-system.ts';
import { ensureFolder, listIfThere, type Place, readVersion, versionsOf } from './history.ts';
import { importLog } from './import-log.ts';
import { folderNames, runPlace, sessionPlace } from './layout.ts';
import { type FileConflict, writeMergeRecord } from './merge-records.ts';
import { closeSession, type OpenSession, openSession, runOfHash, type StoredRun } from './open-session.ts';
import { readRunRecord } from './read-run-record.ts';
import { readSource } from './read-source.ts';
import { replaceFile } from './replace-file.ts';
import { numberedName } from './safe-name.ts';
import { saveRun, saveSession } from './save.ts';
import { openSealed } from './seal.ts';
import { sha256 } from './sha256.ts';

export type MergeReport = {
  /** Runs that came from the other copy. */
  readonly newRuns: readonly string[];
  /** What both had changed in different ways; mine stands, theirs is in `record`. */
  readonly conflicts: readonly FileConflict[];
  /** Where the conflicts with both values were written, or null where there were none. */
  readonly record: string | null;
  readonly notices: readonly Note[];
};

/** Far above any summary, its logo included [bytes]. */
const longestHandover = 512 << 20;

/**
 * Brings another copy of the open session into it: every run that it lacks, and every edit, over the last version
 * that both have in history. Where both changed one thing in different ways, this copy's value stands and both are
 * told and written down. The other folder is only read. After a crash half way, merging again completes it.
 *
 * Errors: store/other-session, store/read-only and its kin, what opening the other folder gives, disk problems.
 */
export async function mergeSession(
  open: OpenSession,
  otherFolder: string,
  now: string,
): Promise<Result<MergeReport>> {
  const { fs } = open.inner;
  if (open.readOnly) return fail(open.readOnly);
  const opened = await openSession(otherFolder, { now, readOnly: true, fs });
  if (!opened.ok) return opened;
  const other = opened.value;
  const merged = await attempt(otherFolder, () => mergeInto(open, other, now, fs));
  await closeSession(other);
  return merged;
}

async function mergeInto(
  open: OpenSession,
  other: OpenSession,
  now: string,
  fs: FileSystem,
): Promise<Result<MergeReport>> {
  if (other.session.id !== open.session.id) {
    const facts = { mine: open.session.name, theirs: other.session.name };
    return fail({ code: 'store/other-session', facts });
  }
  const notices: Note[] = other.notices.filter((note) => note.code !== 'store/unknown-file');
  const conflicts: FileConflict[] = [];
  const newRuns: string[] = [];
  /** Their id of a run to ours: the same log may have been imported under another name. */
  const ids = new Map<string, string>();
  for (const run of other.runs.values()) {
    const taken = await takeRun(open, other, run, now, conflicts, fs);
    if (!taken.ok) return taken;
    ids.set(run.record.id, taken.value.id);
    if (taken.value.isNew) newRuns.push(taken.value.id);
    if (taken.value.notice) notices.push(taken.value.notice);
  }

  const place = sessionPlace(open.folder);
  const theirPlace = sessionPlace(other.folder);
  const base = await commonVersion(place, theirPlace, (json) => readSession(json), fs);
  const theirs = withRunIds(other.session, ids);
  const { value, conflicts: found } = mergeJson(base && withRunIds(base.session, ids), open.session, theirs);
  conflicts.push(...found.map((conflict) => ({ ...conflict, file: place.shown })));
  // Before anything is decided by it: what of theirs does not stand must be found again.
  const record =
    conflicts.length > 0 ? await writeMergeRecord(open.folder, { conflicts, theirs }, now, fs) : null;
  const saved = await saveSession(open, SessionSchema.parse(value), now);
  if (!saved.ok) return saved;
  await copyHandovers(other.folder, open.folder, fs);
  return ok({ newRuns, conflicts, record, notices });
}

type Taken = { readonly id: string; readonly isNew: boolean; readonly notice: Note | null };

async function takeRun(
  open: OpenSession,
  other: OpenSession,
  theirs: StoredRun,
  now: string,
  conflicts: FileConflict[],
  fs: FileSystem,
): Promise<Result<Taken>> {
  const { record } = theirs;
  const same = runOfHash(open, record.sha256);
  if (!same?.hasSource) {
    const source = await readSource(other, record.id);
    if (!source.ok) {
      const facts = { runId: record.id, name: record.name };
      return ok({ id: record.id, isNew: false, notice: { code: 'store/source-missing', facts } });
    }
    const { id: _, schemaVersion: __, sha256: ___, size_bytes: ____, name, ...details } = record;
    const imported = await importLog(open, { name, content: source.value }, details, now);
    if (!imported.ok) return imported;
    if (!same) return ok({ id: imported.value.record.id, isNew: true, notice: null });
  }
  if (!same) throw new Error('a run without a counterpart was imported above');
  const { id } = same.record;
  const place = runPlace(open.folder, id);
  const base = await commonVersion(place, runPlace(other.folder, record.id), (j) => readRunRecord(j, ''), fs);
  const { value, conflicts: found } = mergeJson(base && { ...base, id }, same.record, { ...record, id });
  // When each side imported it and what the file was called there is no difference worth a decision.
  const real = found.filter(({ path }) => path !== 'importedAt' && path !== 'name');
  conflicts.push(...real.map((conflict) => ({ ...conflict, file: place.shown })));
  const saved = await saveRun(open, RunRecordSchema.parse(value), now);
  return saved.ok ? ok({ id, isNew: false, notice: null }) : saved;
}

/** The newest version of a document that both folders have, or undefined. */
async function commonVersion<T>(
  mine: Place,
  theirs: Place,
  read: (json: Record<string, unknown>) => Result<T>,
  fs: FileSystem,
): Promise<T | undefined> {
  const known = new Set((await versionsOf(theirs, fs)).map((version) => version.hash));
  for (const version of await versionsOf(mine, fs)) {
    if (!known.has(version.hash)) continue;
    const bytes = await readVersion(mine, version, fs);
    const opened = bytes ? openSealed(bytes) : null;
    const value = opened ? read(opened.json) : null;
    if (value?.ok) return value.value;
  }
  return undefined;
}

function withRunIds(session: Session, ids: ReadonlyMap<string, string>): Session {
  const ledger = session.ledger.map((entry) => ({
    ...entry,
    runs: entry.runs.map((run) => ({ ...run, runId: ids.get(run.runId) ?? run.runId })),
  }));
  return { ...session, ledger };
}

async function copyHandovers(from: string, to: string, fs: FileSystem): Promise<void> {
  const source = join(from, folderNames.handover);
  const target = join(to, folderNames.handover);
  for (const { name, kind } of await listIfThere(source, fs)) {
    if (kind !== 'file') continue;
    const bytes = await fs.readFile(join(source, name), longestHandover);
    await ensureFolder(target, fs);
    for (let n = 1; ; n++) {
      const path = join(target, n === 1 ? name : numberedFile(name, n));
      if ((await fs.stat(path)) === null) {
        await replaceFile(path, bytes, fs);
        break;
      }
      if (sha256(await fs.readFile(path, longestHandover)) === sha256(bytes)) break;
    }
  }
}

function numberedFile(name: string, n: number): string {
  const at = name.lastIndexOf('.');
  return at <= 0 ? numberedName(name, n) : `${numberedName(name.slice(0, at), n)}${name.slice(at)}`;
}
