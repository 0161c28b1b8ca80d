import { join } from 'node:path';
import { fail, ok, type Result } from '../../core/result/index.ts';
import { type RunRecord, RunRecordSchema, type Session, SessionSchema } from '../../core/session/index.ts';
import { type SaveOptions, saveDocument } from './document.ts';
import { folderNames, runFolder, runPlace, sessionPlace } from './layout.ts';
import { type OpenSession, writing } from './open-session.ts';

/**
 * Saves session.json durably, with a second copy in history. When this returns, the edit is on the disk.
 *
 * Errors: store/changed-outside, store/read-only and its kin, disk problems; the old version then still stands.
 */
export function saveSession(
  open: OpenSession,
  session: Session,
  now: string,
  options: Pick<SaveOptions, 'overwrite'> = {},
): Promise<Result<void>> {
  return writing(open, async () => {
    // What does not fit the schema would not open again: our own mistake, found here and not next week.
    const checked = SessionSchema.parse(session);
    const { fs, saved, tried } = open.inner;
    const place = sessionPlace(open.folder);
    const done = await saveDocument(place, checked, saved, now, fs, { ...options, tried });
    if (!done.ok) return done;
    open.inner.saved = done.value;
    open.session = checked;
    return ok(undefined);
  });
}

/**
 * Saves run.json of one run: notes, column corrections, pull edits. Id, hash and size of the log stay as they
 * were imported.
 *
 * Errors: as saveSession; store/no-run; store/source-missing where the run's folder was taken away meanwhile.
 */
export function saveRun(
  open: OpenSession,
  record: RunRecord,
  now: string,
  options: Pick<SaveOptions, 'overwrite'> = {},
): Promise<Result<void>> {
  return writing(open, async () => {
    const run = open.runs.get(record.id);
    if (!run) return fail({ code: 'store/no-run', facts: { runId: record.id } });
    const { sha256, size_bytes } = run.record;
    const checked = RunRecordSchema.parse({ ...record, sha256, size_bytes });
    const { fs, tried } = open.inner;
    if (await isRunGone(open, record.id))
      return fail({ code: 'store/source-missing', facts: { runId: record.id, name: run.record.name } });
    const place = runPlace(open.folder, record.id);
    const done = await saveDocument(place, checked, run.saved, now, fs, { ...options, tried });
    if (!done.ok) return done;
    open.runs.set(record.id, { ...run, record: checked, saved: done.value });
    await makeDurable(open, record.id);
    return ok(undefined);
  });
}

/** Whether the folder of a run was taken away while its session is still there. */
export async function isRunGone(open: OpenSession, runId: string): Promise<boolean> {
  const { fs } = open.inner;
  return (await fs.stat(runFolder(open.folder, runId))) === null && (await fs.stat(open.folder)) !== null;
}

/** Flushes the name of a run's folder where its import could not. */
export async function makeDurable(open: OpenSession, runId: string): Promise<void> {
  const run = open.runs.get(runId);
  if (!run || run.isDurable) return;
  await open.inner.fs.syncFolder(join(open.folder, folderNames.runs));
  open.runs.set(runId, { ...run, isDurable: true });
}
