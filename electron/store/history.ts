import { dirname, join } from 'node:path';
import { errorCode, type FileSystem } from './file-system.ts';
import { replaceFile } from './replace-file.ts';
import { sha256 } from './sha256.ts';

/**
 * Where a document and its versions lie. `shown` is its path inside the session folder, for people.
 */
export type Place = {
  readonly path: string;
  readonly history: string;
  readonly stem: string;
  readonly shown: string;
};

/** One version in a history folder; what it is stands in its name, so that a listing is enough. */
export type Version = {
  readonly name: string;
  readonly revision: number;
  /** `20270314T102205Z` */
  readonly stamp: string;
  /** First 12 digits of the SHA-256 of the whole file. */
  readonly hash: string;
  /** True for the original of a migration. */
  readonly isOriginal: boolean;
};

const newestKept = 30;

/** Far above any session (10,000 runs take some MB); keeps a planted giant out of memory [bytes]. */
export const longestDocument = 64 << 20;

/** `2027-03-14T10:22:05.120Z` as `20270314T102205Z`, which stands in file names. */
export function stampOf(iso: string): string {
  return iso.replace(/\.\d+/, '').replaceAll(/[-:]/g, '');
}

/** `20270314T102205Z` as a date again, to the second. */
export function isoOf(stamp: string): string {
  return stamp.replace(/^(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d)Z$/, '$1-$2-$3T$4:$5:$6Z');
}

/** Versions of one document, highest revision first; none where there is no history folder. */
export async function versionsOf(place: Place, fs: FileSystem): Promise<Version[]> {
  const pattern = new RegExp(`^${place.stem}-r(\\d{6,})-(\\d{8}T\\d{6}Z)-([0-9a-f]{12})(-original)?\\.json$`);
  const versions: Version[] = [];
  for (const entry of await listIfThere(place.history, fs)) {
    const found = pattern.exec(entry.name);
    if (!found || entry.kind !== 'file') continue;
    const [name, revision = '', stamp = '', hash = '', original] = found;
    versions.push({ name, revision: Number(revision), stamp, hash, isOriginal: original !== undefined });
  }
  // By revision, not by date: the clock may have gone backwards between two saves.
  return versions.sort((a, b) => b.revision - a.revision || (a.stamp < b.stamp ? 1 : -1));
}

/** Folder entries, or none where the folder does not exist. */
export async function listIfThere(folder: string, fs: FileSystem) {
  try {
    return await fs.list(folder);
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return [];
    throw error;
  }
}

/** Creates a folder where there is none yet, and makes that durable. Its parent must exist. */
export async function ensureFolder(folder: string, fs: FileSystem): Promise<void> {
  try {
    await fs.makeFolder(folder);
  } catch (error) {
    if (errorCode(error) !== 'EEXIST') throw error;
    return;
  }
  try {
    await fs.syncFolder(dirname(folder));
  } catch (error) {
    // Next time it would be taken for durable because it stands.
    await fs.removeFolder(folder).catch(() => undefined);
    throw error;
  }
}

/** Content of a version, or null where it is not what its name says. */
export async function readVersion(
  place: Place,
  version: Version,
  fs: FileSystem,
): Promise<Uint8Array | null> {
  const bytes = await readIfPossible(join(place.history, version.name), fs);
  return bytes && sha256(bytes).startsWith(version.hash) ? bytes : null;
}

/** False where a version was thinned out since it was listed: no damage. */
export async function isStillThere(place: Place, version: Version, fs: FileSystem): Promise<boolean> {
  return (await fs.stat(join(place.history, version.name))) !== null;
}

/** Content of one document among others, or null where the disk refuses it: it must not hide the others. */
export async function readIfPossible(path: string, fs: FileSystem): Promise<Uint8Array | null> {
  try {
    return await fs.readFile(path, longestDocument);
  } catch (error) {
    if (errorCode(error) !== undefined) return null;
    throw error;
  }
}

/** Puts a copy into history, durably; returns its name. */
export async function keepVersion(
  place: Place,
  content: string | Uint8Array,
  facts: { readonly revision: number; readonly savedAt: string; readonly isOriginal?: boolean },
  fs: FileSystem,
): Promise<string> {
  const revision = String(facts.revision).padStart(6, '0');
  const mark = facts.isOriginal ? '-original' : '';
  const name = `${place.stem}-r${revision}-${stampOf(facts.savedAt)}-${sha256(content).slice(0, 12)}${mark}.json`;
  await ensureFolder(place.history, fs);
  await replaceFile(join(place.history, name), content, fs);
  return name;
}

/**
 * Which versions may go: the newest 30 stay, of the older ones the last of each day, and every original of a
 * migration.
 */
export function superfluous(versions: readonly Version[]): Version[] {
  const days = new Set<string>();
  return versions.filter((version, index) => {
    const day = version.stamp.slice(0, 8);
    const isLastOfDay = !days.has(day);
    days.add(day);
    return index >= newestKept && !isLastOfDay && !version.isOriginal;
  });
}

/** Removes superfluous versions. A failure is no loss and is not told. */
export async function thinHistory(place: Place, versions: readonly Version[], fs: FileSystem): Promise<void> {
  for (const version of superfluous(versions)) {
    await fs.removeFile(join(place.history, version.name)).catch(() => undefined);
  }
}
