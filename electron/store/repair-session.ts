import { join } from 'node:path';
import { fail, type Note, ok, type Result } from '../../core/result/index.ts';
import { readSession } from '../../core/session/index.ts';
import { readCacheFile } from './channel-cache.ts';
import { type CheckReport, checkSession } from './check-session.ts';
import { attempt } from './disk-problem.ts';
import { loadDocument } from './document.ts';
import type { FileSystem } from './file-system.ts';
import { listIfThere, type Place, readVersion, versionsOf } from './history.ts';
import { cachePath, folderNames, runPlace, sessionPlace, shownSource, sourcePath } from './layout.ts';
import { mergeRecords } from './merge-records.ts';
import { nodeFileSystem } from './node-file-system.ts';
import { closeSession, type OpenOptions, type OpenSession, openSession, writing } from './open-session.ts';
import { readRunRecord } from './read-run-record.ts';
import { removeUnfinishedIn, secondCopy } from './recover.ts';
import { setAside } from './set-aside.ts';
import { sha256OfFile } from './sha256.ts';

export type RepairReport = {
  /** What was done, damage told in words. */
  readonly done: readonly Note[];
  /** The check after it: what is left needs the original log or a backup. */
  readonly after: CheckReport;
};

/**
 * Repairs what can be repaired from history and sets aside what can't: a log that is no longer what was
 * imported, a version that is not what its name says. Nothing is deleted but caches.
 *
 * Errors: as openSession; store/locked and its kin where the folder cannot be written.
 */
export async function repairSession(folder: string, options: OpenOptions): Promise<Result<RepairReport>> {
  const { now, fs = nodeFileSystem } = options;
  const opened = await openSession(folder, { ...options, readOnly: false });
  if (!opened.ok) return opened;
  const open = opened.value;
  const done = [...open.notices];
  const repaired = open.readOnly
    ? fail(open.readOnly)
    : await writing(open, () => repairFiles(open, now, done, fs));
  await closeSession(open);
  if (!repaired.ok) return repaired;
  const after = await checkSession(folder, { fs });
  return after.ok ? ok({ done, after: after.value }) : after;
}

function repairFiles(open: OpenSession, now: string, done: Note[], fs: FileSystem): Promise<Result<void>> {
  const { folder } = open;
  return attempt(folder, async () => {
    const session = sessionPlace(folder);
    await repairHistory(folder, session, now, done, fs);
    const records = await mergeRecords(folder, fs);
    for (const { file, isDamaged } of records.ok ? records.value : []) {
      if (!isDamaged) continue;
      const to = await setAside(folder, file, now, fs);
      done.push({ code: 'store/set-aside', facts: { file, to } });
    }
    const standing = await loadDocument(session, (json) => readSession(json), fs);
    if (standing.ok) await secondCopy(session, standing.value, now, fs);
    for (const [runId, run] of open.runs) {
      const place = runPlace(folder, runId);
      await repairHistory(folder, place, now, done, fs);
      const loaded = await loadDocument(place, (json) => readRunRecord(json, place.shown), fs);
      if (loaded.ok) await secondCopy(place, loaded.value, now, fs);
      if (run.hasSource && !(await isWhole(sourcePath(folder, runId), run.record.sha256, fs))) {
        const to = await setAside(folder, shownSource(runId), now, fs);
        done.push({ code: 'store/set-aside', facts: { file: shownSource(runId), to } });
      }
      const cache = cachePath(folder, runId);
      if ((await readCacheFile(cache, fs)) === 'damaged') await fs.removeFile(cache);
    }
    return ok(undefined);
  });
}

async function isWhole(path: string, expected: string, fs: FileSystem): Promise<boolean> {
  const found = await attempt(path, async () => ok(await sha256OfFile(path, fs)));
  return found.ok && found.value.sha256 === expected;
}

async function repairHistory(
  folder: string,
  place: Place,
  now: string,
  done: Note[],
  fs: FileSystem,
): Promise<void> {
  const shownFolder = place.shown.slice(0, place.shown.lastIndexOf('/') + 1);
  const leavings = await removeUnfinishedIn(place.history, await listIfThere(place.history, fs), fs);
  if (leavings > 0) done.push({ code: 'store/unfinished-removed', facts: { files: leavings } });
  for (const version of await versionsOf(place, fs)) {
    if (await readVersion(place, version, fs)) continue;
    const file = join(shownFolder, folderNames.history, version.name).replaceAll('\\', '/');
    const to = await setAside(folder, file, now, fs);
    done.push({ code: 'store/set-aside', facts: { file, to } });
  }
}
