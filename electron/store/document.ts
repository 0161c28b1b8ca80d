import { dirname, join } from 'node:path';
import { fail, ok, type Problem, type Result } from '../../core/result/index.ts';
import { differingFields, sameJson } from '../../core/session/index.ts';
import { problemOf } from './disk-problem.ts';
import { errorCode, type FileSystem } from './file-system.ts';
import {
  isoOf,
  keepVersion,
  longestDocument,
  type Place,
  readVersion,
  thinHistory,
  type Version,
  versionsOf,
} from './history.ts';
import { replaceFile } from './replace-file.ts';
import { isBitDamage, type Opened, openSealed, sealedText } from './seal.ts';
import { sha256 } from './sha256.ts';

/** A damaged file is compared with this many earlier versions to tell damage from an edit by hand. */
const comparedVersions = 5;

/** What the store knows of a document on disk: enough to notice that somebody else wrote it. */
export type Saved = {
  /** SHA-256 of the file's bytes; null where there is no such file. */
  readonly fingerprint: string | null;
  /** Highest revision seen, in the file or in history. */
  readonly revision: number;
};

/** A document as read. */
export type Loaded<T> = {
  readonly value: T;
  /** The JSON behind `value`, before any migration. */
  readonly json: Record<string, unknown>;
  readonly bytes: Uint8Array;
  readonly saved: Saved;
  /**
   * `unsealed`: not written by this program and never seen before, as in a bundle or a folder made by a script.
   * `damaged` and `missing`: the value is the newest good version from history.
   */
  readonly condition: 'sound' | 'unsealed' | 'changed-outside' | 'damaged' | 'missing';
  /** For `changed-outside`. */
  readonly fields: string[];
  /** When the version in `value` was saved, where that is known. */
  readonly savedAt: string | null;
};

type Read<T> = (json: Record<string, unknown>) => Result<T>;

/**
 * Reads a sealed document, telling an edit by hand (taken as it stands) from damage (the newest good version of
 * history is taken). Writes nothing.
 *
 * Errors: store/missing; store/damaged where no version is good either; what `read` refuses in a sound file, or
 * in one that has no good version; disk problems of the file where history does not help.
 */
export async function loadDocument<T>(
  place: Place,
  read: Read<T>,
  fs: FileSystem,
): Promise<Result<Loaded<T>>> {
  const { bytes, failure } = await readBytes(place.path, fs);
  const opened = bytes ? openSealed(bytes) : null;
  if (bytes && opened?.seal) {
    const value = read(opened.json);
    const { revision } = opened.seal;
    // Only a save asks for it, and a large session holds many documents.
    const saved: Saved = {
      get fingerprint() {
        return sha256(bytes);
      },
      revision,
    };
    return value.ok ? ok(loaded(value.value, opened, bytes, saved, 'sound')) : value;
  }

  const versions = await versionsOf(place, fs);
  const saved: Saved = {
    fingerprint: bytes ? sha256(bytes) : null,
    revision: Math.max(0, ...versions.map((v) => v.revision)),
  };
  let refused: Result<never> | null = null;
  if (bytes && opened && !(await isDamageOfKnown(place, bytes, versions, fs))) {
    const value = read(opened.json);
    if (value.ok) {
      const isKnown = versions.some((v) => saved.fingerprint?.startsWith(v.hash));
      if (isKnown) return ok(loaded(value.value, opened, bytes, saved, 'sound'));
      if (versions.length === 0 && !opened.hasSeal) {
        return ok(loaded(value.value, opened, bytes, saved, 'unsealed'));
      }
      const last = await newestGood(place, versions, read, fs);
      const fields = last ? differingFields(last.opened.json, opened.json) : [];
      return ok({ ...loaded(value.value, opened, bytes, saved, 'changed-outside'), fields });
    }
    // A newer program's file is whole: it must be left alone, not replaced by an older version.
    if (value.problems[0].code === 'session/newer-version') return value;
    refused = value;
  }

  const good = await newestGood(place, versions, read, fs);
  if (!good) {
    if (failure) return fail(failure);
    if (!bytes && versions.length === 0) return fail({ code: 'store/missing', facts: { path: place.shown } });
    // Whole JSON that does not fit: naming the field helps more than calling it damaged.
    return refused ?? fail({ code: 'store/damaged', facts: { file: place.shown } });
  }
  const condition = bytes || failure ? 'damaged' : 'missing';
  const savedAt = good.opened.seal?.savedAt ?? isoOf(good.version.stamp);
  return ok({ ...loaded(good.value, good.opened, good.bytes, saved, condition), savedAt });
}

function loaded<T>(
  value: T,
  opened: Opened,
  bytes: Uint8Array,
  saved: Saved,
  condition: Loaded<T>['condition'],
): Loaded<T> {
  const savedAt = opened.seal?.savedAt ?? null;
  return { value, json: opened.json, bytes, saved, condition, fields: [], savedAt };
}

/** A link or a giant planted in the file's place, or a sector that cannot be read: history may still be. */
const lastingFailures = new Set(['ELOOP', 'EISDIR', 'EFBIG', 'EIO']);
const readTries = 3;

/** Null bytes where there is no file; a `failure` where there is one that cannot be read. */
async function readBytes(
  path: string,
  fs: FileSystem,
): Promise<{ bytes: Uint8Array | null; failure: Problem | null }> {
  for (let tried = 1; ; tried++) {
    try {
      return { bytes: await fs.readFile(path, longestDocument), failure: null };
    } catch (error) {
      const code = errorCode(error) ?? '';
      if (code === 'ENOENT') return { bytes: null, failure: null };
      if (!lastingFailures.has(code)) throw error;
      // A failure that passes (a share that hiccups) must not bring an earlier version back.
      if (tried === readTries) return { bytes: null, failure: problemOf(error, path) };
    }
  }
}

async function isDamageOfKnown(
  place: Place,
  bytes: Uint8Array,
  versions: readonly Version[],
  fs: FileSystem,
): Promise<boolean> {
  for (const version of versions.slice(0, comparedVersions)) {
    const known = await readVersion(place, version, fs);
    if (known && isBitDamage(bytes, known)) return true;
  }
  return false;
}

async function newestGood<T>(place: Place, versions: readonly Version[], read: Read<T>, fs: FileSystem) {
  for (const version of versions) {
    const bytes = await readVersion(place, version, fs);
    const opened = bytes ? openSealed(bytes) : null;
    if (!bytes || !opened) continue;
    const value = read(opened.json);
    if (value.ok) return { version, bytes, opened, value: value.value };
  }
  return null;
}

export type SaveOptions = {
  /** Replace even a file that another program changed meanwhile; that version is kept in history. */
  readonly overwrite?: boolean;
  /**
   * Fingerprints of what this program tried to write. A save may have failed in its last flush and stand all the
   * same; that is no change by another program.
   */
  readonly tried?: Set<string>;
};

/**
 * Saves a document durably: the second copy first, then the file itself, so that at each instant one good
 * version stands. Nothing is written where nothing changed.
 *
 * Errors: store/changed-outside where the file is not the one in `saved`; with `overwrite` that version is put
 * into history and replaced. Disk failures are thrown; the old version then still stands.
 */
export async function saveDocument(
  place: Place,
  value: Readonly<Record<string, unknown>>,
  saved: Saved,
  now: string,
  fs: FileSystem,
  options: SaveOptions = {},
): Promise<Result<Saved>> {
  const { bytes } = await readBytes(place.path, fs);
  const fingerprint = bytes ? sha256(bytes) : null;
  const isOurs =
    fingerprint === saved.fingerprint || (fingerprint !== null && options.tried?.has(fingerprint));
  if (bytes && !isOurs && !options.overwrite) {
    return fail({ code: 'store/changed-outside', facts: { file: place.shown } });
  }
  const standing = bytes ? openSealed(bytes) : null;
  // One that stands only by a try that failed in its last flush is not durable yet.
  const isDurable = fingerprint === saved.fingerprint;
  if (isDurable && standing?.seal && sameJson(standing.json, JSON.parse(JSON.stringify(value)))) {
    // Nor is, perhaps, one that an earlier program left so.
    await fs.syncFolder(dirname(place.path));
    return ok({ ...saved, fingerprint });
  }

  const versions = await versionsOf(place, fs);
  let revision = Math.max(saved.revision, ...versions.map((v) => v.revision));
  // A file that came from elsewhere (edited by hand, bundled) has no second copy yet and is about to go.
  if (bytes && fingerprint && !versions.some((v) => fingerprint.startsWith(v.hash))) {
    await keepVersion(place, bytes, { revision: ++revision, savedAt: now }, fs);
  }
  const seal = { revision: ++revision, savedAt: now };
  const text = sealedText(value, seal);
  options.tried?.add(sha256(text));
  const kept = await keepVersion(place, text, seal, fs);
  try {
    await replaceFile(place.path, text, fs);
  } catch (error) {
    // What was told as not saved should not come back as a version, unless it stands after all.
    const standsNow = await readBytes(place.path, fs).catch(() => null);
    if (standsNow?.bytes && sha256(standsNow.bytes) !== sha256(text)) {
      await fs.removeFile(join(place.history, kept)).catch(() => undefined);
    }
    throw error;
  }
  await thinHistory(place, await versionsOf(place, fs), fs);
  return ok({ fingerprint: sha256(text), revision });
}

/** Puts the bytes of a good version where the document belongs. */
export async function restoreDocument<T>(place: Place, good: Loaded<T>, fs: FileSystem): Promise<Saved> {
  await replaceFile(place.path, good.bytes, fs);
  return { fingerprint: sha256(good.bytes), revision: good.saved.revision };
}
