import { basename, dirname, join, resolve } from 'node:path';
import { fail, ok, type Result } from '../../core/result/index.ts';
import { type Session, SessionSchema } from '../../core/session/index.ts';
import { attemptInto } from './disk-problem.ts';
import { saveDocument } from './document.ts';
import { type FileSystem, isNameTaken } from './file-system.ts';
import { folderNames, sessionPlace } from './layout.ts';
import { nodeFileSystem } from './node-file-system.ts';
import { pathInside } from './path-inside.ts';
import { removeStale, removeTree } from './recover.ts';
import { unfinishedNameFor } from './replace-file.ts';
import { mostOfOneName, numberedName, safeFolderName } from './safe-name.ts';

/**
 * Makes a session folder in `parent`, named after the session; `Fenmoor (2)` where that is taken. It appears
 * under its name only once it is whole.
 *
 * @returns  the folder's path
 * Errors: store/no-folder, store/already-there, disk problems.
 */
export async function createSessionFolder(
  parent: string,
  session: Session,
  now: string,
  fs: FileSystem = nodeFileSystem,
): Promise<Result<string>> {
  const name = safeFolderName(session.name);
  for (let n = 1; n <= mostOfOneName; n++) {
    const folder = pathInside(parent, numberedName(name, n));
    if (folder === null) return fail({ code: 'store/bad-path', facts: { path: name } });
    const made = await createSessionAt(folder, session, now, fs);
    if (made.ok || made.problems[0].code !== 'store/already-there') return made;
  }
  return fail({ code: 'store/already-there', facts: { path: join(parent, name) } });
}

/**
 * Makes a session folder at exactly this path, which must not exist or be an empty folder.
 *
 * Errors: store/no-folder, store/already-there, disk problems.
 */
export function createSessionAt(
  folder: string,
  session: Session,
  now: string,
  fs: FileSystem = nodeFileSystem,
): Promise<Result<string>> {
  const target = resolve(folder);
  const parent = dirname(target);
  return attemptInto(parent, target, fs, async () => {
    const standing = await fs.stat(target);
    if (standing && (standing.kind !== 'folder' || (await fs.list(target)).length > 0)) {
      return fail({ code: 'store/already-there', facts: { path: target } });
    }
    await removeStale(parent, fs);
    const staged = join(parent, unfinishedNameFor(basename(target)));
    await fs.makeFolder(staged);
    try {
      await fs.makeFolder(join(staged, folderNames.runs));
      const place = sessionPlace(staged);
      const saved = await saveDocument(
        place,
        SessionSchema.parse(session),
        { fingerprint: null, revision: 0 },
        now,
        fs,
      );
      if (!saved.ok) return saved;
      // Windows does not rename over an empty folder.
      if (standing) await fs.removeFolder(target);
      await fs.rename(staged, target);
    } catch (error) {
      await removeTree(staged, fs).catch(() => undefined);
      // Somebody else made the same name a moment ago.
      if (isNameTaken(error) && (await fs.stat(target))) {
        return fail({ code: 'store/already-there', facts: { path: target } });
      }
      throw error;
    }
    await fs.syncFolder(parent);
    return ok(target);
  });
}
