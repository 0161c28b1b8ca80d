import { join } from 'node:path';
import type { Note } from '../../core/result/index.ts';
import { IdSchema, type RunRecord } from '../../core/session/index.ts';
import { loadDocument, saveDocument } from './document.ts';
import type { Entry, FileSystem } from './file-system.ts';
import { listIfThere } from './history.ts';
import { folderNames, runFolder, runPlace, sourcePath } from './layout.ts';
import type { StoredRun } from './open-session.ts';
import { readRunRecord } from './read-run-record.ts';
import { removeUnfinishedIn, settle } from './recover.ts';
import { setAside } from './set-aside.ts';
import { sha256OfFile } from './sha256.ts';

/** Reads overlap while the disk works; more at once gains nothing and uses up file handles. */
const atOnce = 32;

export type RunsToLoad = {
  readonly mayWrite: boolean;
  /** Looks for leavings in each run's folders, which costs two listings a run. */
  readonly afterCrash: boolean;
};

/**
 * All runs of a session by id, in order of import. A run whose record is lost with all versions is made anew
 * from its log where the folder may be written, and left out (and told) where not.
 */
export async function loadRuns(
  folder: string,
  how: RunsToLoad,
  now: string,
  notices: Note[],
  fs: FileSystem,
): Promise<Map<string, StoredRun>> {
  const entries = await listIfThere(join(folder, folderNames.runs), fs);
  const found: StoredRun[] = [];
  for (let i = 0; i < entries.length; i += atOnce) {
    const group = entries.slice(i, i + atOnce).map(async (entry) => {
      const told: Note[] = [];
      const run = await loadRun(folder, entry, how, now, told, fs);
      return { run, told };
    });
    for (const { run, told } of await Promise.all(group)) {
      if (run) found.push(run);
      notices.push(...told);
    }
  }
  found.sort(
    (a, b) => compare(a.record.importedAt, b.record.importedAt) || compare(a.record.id, b.record.id),
  );
  return new Map(found.map((run) => [run.record.id, run]));
}

function compare(a: string, b: string): number {
  return a < b ? -1 : Number(a > b);
}

async function loadRun(
  folder: string,
  { name, kind }: Entry,
  { mayWrite, afterCrash }: RunsToLoad,
  now: string,
  notices: Note[],
  fs: FileSystem,
): Promise<StoredRun | null> {
  if (kind !== 'folder' || !IdSchema.safeParse(name).success) {
    // Staged imports of a program that has the session open are its own business.
    if (!name.startsWith('.')) notices.push({ code: 'store/unknown-file', facts: { file: `runs/${name}` } });
    return null;
  }
  const place = runPlace(folder, name);
  if (mayWrite && afterCrash) {
    let files = await removeUnfinishedIn(runFolder(folder, name), await fs.list(runFolder(folder, name)), fs);
    files += await removeUnfinishedIn(place.history, await listIfThere(place.history, fs), fs);
    if (files > 0) notices.push({ code: 'store/unfinished-removed', facts: { files } });
  }
  const hasSource = (await fs.stat(sourcePath(folder, name)))?.kind === 'file';
  const load = () => loadDocument(place, (json) => readRunRecord(json, place.shown), fs);
  let loaded = await load();
  if (!loaded.ok && hasSource && mayWrite) {
    // A share that hiccups shows nothing for a moment. What is lost must be lost again once its folder answers.
    await fs.list(runFolder(folder, name));
    loaded = await load();
  }
  if (!loaded.ok) {
    const [{ code }] = loaded.problems;
    if (code === 'session/newer-version') {
      notices.push({ code: 'store/newer-run', facts: { file: place.shown } });
    } else if (hasSource && mayWrite) {
      return rebuildRun(folder, name, now, notices, fs);
    } else {
      const isEmpty = code === 'store/missing' && !hasSource;
      if (isEmpty) notices.push({ code: 'store/unknown-file', facts: { file: `runs/${name}` } });
      else notices.push({ code: 'store/damage-left', facts: { file: place.shown } });
    }
    return null;
  }
  const saved = await settle(folder, place, loaded.value, mayWrite, now, notices, fs);
  // A run folder copied by hand keeps its record's old id; the folder's name is the one that is unique.
  const record: RunRecord = { ...loaded.value.value, id: name };
  if (!hasSource) {
    notices.push({ code: 'store/source-missing', facts: { runId: name, name: record.name } });
  }
  return { record, hasSource, saved, isDurable: true };
}

async function rebuildRun(
  folder: string,
  runId: string,
  now: string,
  notices: Note[],
  fs: FileSystem,
): Promise<StoredRun> {
  const place = runPlace(folder, runId);
  if ((await fs.stat(place.path)) !== null) {
    const to = await setAside(folder, place.shown, now, fs);
    notices.push({ code: 'store/set-aside', facts: { file: place.shown, to } });
  }
  const { sha256, size } = await sha256OfFile(sourcePath(folder, runId), fs);
  const record = readRunRecord(
    // The date is that of the rebuilding: when it was imported is not known any more.
    { schemaVersion: 1, id: runId, name: runId, importedAt: now, size_bytes: size, sha256 },
    place.shown,
  );
  if (!record.ok) throw new Error('a rebuilt record must fit the schema');
  const saved = await saveDocument(place, record.value, { fingerprint: null, revision: 0 }, now, fs);
  if (!saved.ok) throw new Error('nothing stands where a rebuilt record goes');
  notices.push({ code: 'store/run-rebuilt', facts: { runId } });
  return { record: record.value, hasSource: true, saved: saved.value, isDurable: true };
}
