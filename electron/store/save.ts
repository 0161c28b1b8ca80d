import { fail, ok, type Result } from '../../core/result/index.ts';
import { type RunRecord, RunRecordSchema, type Session, SessionSchema } from '../../core/session/index.ts';
import { saveDocument } from './document.ts';
import { runPlace, sessionPlace } from './layout.ts';
import { type OpenSession, writing } from './open-session.ts';

export type SaveOptions = {
  /** Replace even a file that another program changed meanwhile; that version is kept in history. */
  readonly overwrite?: boolean;
};

/**
 * Saves session.json durably, with a second copy in history. When this returns, the edit is on the disk.
 *
 * Errors: store/changed-outside, store/read-only and its kin, disk problems; the old version then still stands.
 */
export function saveSession(
  open: OpenSession,
  session: Session,
  now: string,
  options: SaveOptions = {},
): Promise<Result<void>> {
  return writing(open, async () => {
    // What does not fit the schema would not open again: our own mistake, found here and not next week.
    const checked = SessionSchema.parse(session);
    const { fs, saved } = open.inner;
    const done = await saveDocument(sessionPlace(open.folder), checked, saved, now, fs, options);
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
 * Errors: as saveSession; store/no-run.
 */
export function saveRun(
  open: OpenSession,
  record: RunRecord,
  now: string,
  options: SaveOptions = {},
): Promise<Result<void>> {
  return writing(open, async () => {
    const run = open.runs.get(record.id);
    if (!run) return fail({ code: 'store/no-run', facts: { runId: record.id } });
    const { sha256, size_bytes } = run.record;
    const checked = RunRecordSchema.parse({ ...record, sha256, size_bytes });
    const place = runPlace(open.folder, record.id);
    const done = await saveDocument(place, checked, run.saved, now, open.inner.fs, options);
    if (!done.ok) return done;
    open.runs.set(record.id, { ...run, record: checked, saved: done.value });
    return ok(undefined);
  });
}
