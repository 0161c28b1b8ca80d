import { join } from 'node:path';
import { ok, type Result } from '../../core/result/index.ts';
import { readSession, type Session } from '../../core/session/index.ts';
import { attempt } from './disk-problem.ts';
import type { FileSystem } from './file-system.ts';
import { isoOf, isStillThere, listIfThere, readIfPossible, readVersion, versionsOf } from './history.ts';
import { folderNames, sessionPlace } from './layout.ts';
import { nodeFileSystem } from './node-file-system.ts';
import { openSealed } from './seal.ts';

/** An earlier version of session.json, as it would open today. */
export type StoredVersion = {
  /** Its path inside the session folder, `history/session-r000012-...json`. */
  readonly file: string;
  readonly source: 'history' | 'set-aside';
  /** Null for what was set aside. */
  readonly revision: number | null;
  /** When it was saved or set aside, ISO 8601 in UTC, to the second. */
  readonly at: string;
  readonly isOriginal: boolean;
} & Content;

/** `invalid`: whole JSON with a field that does not fit. */
type Content =
  | { readonly session: Session; readonly unusable: null }
  | { readonly session: null; readonly unusable: 'damaged' | 'newer' | 'invalid' };

/** As setAside names it; run.json and logs that were set aside are no versions of the session. */
const asideName = /^(\d{8}T\d{6}Z)-session\.json(?:-\d+)?$/;

/**
 * Earlier versions of session.json, the newest first: those of history, and files that were set aside because
 * they no longer fitted their seal. An older format is migrated in memory alone. Changes nothing.
 *
 * Errors: disk problems of the folder; one unreadable version is told in its own line.
 */
export function sessionVersions(
  folder: string,
  fs: FileSystem = nodeFileSystem,
): Promise<Result<StoredVersion[]>> {
  return attempt(folder, async () => {
    const place = sessionPlace(folder);
    const found: StoredVersion[] = [];
    for (const version of await versionsOf(place, fs)) {
      const { revision, isOriginal } = version;
      const file = `${folderNames.history}/${version.name}`;
      const bytes = await readVersion(place, version, fs);
      if (!bytes && !(await isStillThere(place, version, fs))) continue;
      const facts = { file, source: 'history', revision, at: isoOf(version.stamp), isOriginal } as const;
      found.push({ ...facts, ...read(bytes, file) });
    }
    for (const { name, kind } of await listIfThere(join(folder, folderNames.setAside), fs)) {
      const stamp = asideName.exec(name)?.[1];
      if (stamp === undefined || kind !== 'file') continue;
      const file = `${folderNames.setAside}/${name}`;
      const bytes = await readIfPossible(join(folder, file), fs);
      const facts = {
        file,
        source: 'set-aside',
        revision: null,
        at: isoOf(stamp),
        isOriginal: false,
      } as const;
      found.push({ ...facts, ...read(bytes, file) });
    }
    // Dates alone would not do: the clock may have gone backwards, and revisions have not.
    const history = found.filter((v) => v.source === 'history');
    const aside = found.filter((v) => v.source === 'set-aside').sort((a, b) => (a.at < b.at ? 1 : -1));
    return ok(merged(history, aside));
  });
}

/** Puts what was set aside between the saves by date, leaving the order of the saves alone. */
function merged(history: StoredVersion[], aside: StoredVersion[]): StoredVersion[] {
  const all = [...history];
  for (const one of aside.toReversed()) {
    const at = all.findIndex((other) => other.at <= one.at);
    all.splice(at < 0 ? all.length : at, 0, one);
  }
  return all;
}

function read(bytes: Uint8Array | null, file: string): Content {
  const opened = bytes ? openSealed(bytes) : null;
  if (!opened) return { session: null, unusable: 'damaged' };
  const session = readSession(opened.json, file);
  if (session.ok) return { session: session.value.session, unusable: null };
  const isNewer = session.problems[0].code === 'session/newer-version';
  return { session: null, unusable: isNewer ? 'newer' : 'invalid' };
}
