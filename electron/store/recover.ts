import { join } from 'node:path';
import type { Note } from '../../core/result/index.ts';
import { IdSchema, RunRecordSchema } from '../../core/session/index.ts';
import type { Loaded, Saved } from './document.ts';
import { loadDocument, restoreDocument } from './document.ts';
import { diskError, errorCode, type FileSystem, removeIfThere } from './file-system.ts';
import { keepVersion, listIfThere, type Place, versionsOf } from './history.ts';
import { folderNames, placeIn, runFolder, sourceName } from './layout.ts';
import { isLockFile } from './lock.ts';
import { readRunRecord } from './read-run-record.ts';
import { isUnfinished, madeFrom } from './replace-file.ts';
import { setAside } from './set-aside.ts';
import { sha256OfFile } from './sha256.ts';

/** Removes what interrupted writes left in these folders. Nothing of it was ever acknowledged. */
export async function removeUnfinished(folder: string, notices: Note[], fs: FileSystem): Promise<void> {
  let files = 0;
  for (const at of [folder, join(folder, folderNames.history)]) {
    files += await removeUnfinishedIn(at, await listIfThere(at, fs), fs);
  }
  if (files > 0) notices.push({ code: 'store/unfinished-removed', facts: { files } });
}

export async function removeUnfinishedIn(
  at: string,
  entries: readonly { readonly name: string; readonly kind: string }[],
  fs: FileSystem,
): Promise<number> {
  let files = 0;
  for (const { name, kind } of entries) {
    if (kind !== 'file' || !isUnfinished(name)) continue;
    const isRemoved = await removeIfThere(join(at, name), fs);
    // A lock may belong to a program that opens the session at this moment: it tries again, and nothing was lost.
    if (isRemoved && !isLockFile(madeFrom(name))) files++;
  }
  return files;
}

const day_ms = 86_400_000;

/**
 * Removes what creating, packing or unpacking left in a folder that is no session, where no lock tells whether
 * its maker still lives: what nobody has touched for a day. A failure is no loss and is not told.
 */
export async function removeStale(folder: string, fs: FileSystem): Promise<void> {
  try {
    for (const { name, kind } of await fs.list(folder)) {
      if (!isUnfinished(name)) continue;
      const path = join(folder, name);
      const state = await fs.stat(path);
      if (!state || Date.now() - state.modified_ms < day_ms) continue;
      if (kind === 'folder') await removeTree(path, fs);
      else await fs.removeFile(path);
    }
  } catch (error) {
    if (errorCode(error) === undefined) throw error;
  }
}

/**
 * An import is staged under an unfinished name and gets its own by one rename. One that was complete but for
 * that rename is finished; any other is removed: it was never acknowledged, and its original is where it was.
 */
export async function finishImports(folder: string, notices: Note[], fs: FileSystem): Promise<void> {
  const runs = join(folder, folderNames.runs);
  for (const { name, kind } of await listIfThere(runs, fs)) {
    if (!isUnfinished(name)) continue;
    const staged = join(runs, name);
    if (kind !== 'folder') {
      await fs.removeFile(staged);
      continue;
    }
    const runId = await completeImport(staged, fs);
    const target = runId === null ? null : runFolder(folder, runId);
    if (runId !== null && target !== null && (await fs.stat(target)) === null) {
      await fs.rename(staged, target);
      await fs.syncFolder(runs);
      notices.push({ code: 'store/import-finished', facts: { runId } });
    } else {
      await removeTree(staged, fs);
      notices.push({ code: 'store/import-discarded', facts: { name: madeFrom(name) } });
    }
  }
}

/** The id of a staged run whose record and log are whole, else null. */
async function completeImport(staged: string, fs: FileSystem): Promise<string | null> {
  const place = placeIn(staged, '', 'run');
  const loaded = await loadDocument(place, (json) => readRunRecord(json, place.shown), fs);
  if (!loaded.ok || loaded.value.condition !== 'sound') return null;
  const { id, sha256 } = RunRecordSchema.parse(loaded.value.value);
  const source = join(staged, sourceName);
  if ((await fs.stat(source))?.kind !== 'file') return null;
  return IdSchema.safeParse(id).success && (await sha256OfFile(source, fs)).sha256 === sha256 ? id : null;
}

/** Removes a folder with all in it, never following a link. */
export async function removeTree(folder: string, fs: FileSystem): Promise<void> {
  for (const { name, kind } of await fs.list(folder)) {
    const path = join(folder, name);
    if (kind === 'folder') await removeTree(path, fs);
    else await fs.removeFile(path);
  }
  await fs.removeFolder(folder);
}

/**
 * Brings one document into order after loading: a damaged file goes aside, the good version takes its place, a
 * version that came from elsewhere gets its second copy. Tells what was done, or only what was found where the
 * folder may not be written.
 */
export async function settle<T>(
  folder: string,
  place: Place,
  loaded: Loaded<T>,
  mayWrite: boolean,
  now: string,
  notices: Note[],
  fs: FileSystem,
): Promise<Saved> {
  const { condition, fields, savedAt, saved } = loaded;
  if (condition === 'changed-outside') {
    notices.push({ code: 'store/changed-outside', facts: { file: place.shown, fields } });
  }
  if (condition === 'damaged' && !mayWrite) {
    notices.push({ code: 'store/damage-left', facts: { file: place.shown } });
  }
  if (!mayWrite) return saved;
  // It was not there a moment ago and is now: a share that hiccups, and no reason to bring an older one back.
  if (condition === 'missing' && (await fs.stat(place.path)) !== null) throw diskError('ESTALE', place.path);
  if (condition === 'damaged' || condition === 'missing') {
    const to = condition === 'damaged' ? await setAside(folder, place.shown, now, fs) : null;
    const restored = await restoreDocument(place, loaded, fs);
    notices.push({ code: 'store/restored', facts: { file: place.shown, savedAt: savedAt ?? '', to } });
    return restored;
  }
  return condition === 'sound' ? saved : secondCopy(place, loaded, now, fs);
}

/** Sees to it that the standing version is in history too. */
export async function secondCopy<T>(
  place: Place,
  loaded: Loaded<T>,
  now: string,
  fs: FileSystem,
): Promise<Saved> {
  const { fingerprint } = loaded.saved;
  const versions = await versionsOf(place, fs);
  const newest = Math.max(loaded.saved.revision, ...versions.map((v) => v.revision));
  if (fingerprint === null || versions.some((v) => fingerprint.startsWith(v.hash))) {
    return { fingerprint, revision: newest };
  }
  // Under the revision that it holds itself, if any; an edit by hand has none and becomes the newest.
  const revision = loaded.condition === 'sound' ? loaded.saved.revision : newest + 1;
  await keepVersion(place, loaded.bytes, { revision, savedAt: loaded.savedAt ?? now }, fs);
  return { fingerprint, revision: Math.max(newest, revision) };
}
