import { join } from 'node:path';
import { ok, type Result } from '../../core/result/index.ts';
import { readSession } from '../../core/session/index.ts';
import { attempt } from './disk-problem.ts';
import { loadDocument } from './document.ts';
import type { FileSystem } from './file-system.ts';
import { listIfThere } from './history.ts';
import { sessionPlace } from './layout.ts';
import { nodeFileSystem } from './node-file-system.ts';

export type ListedSession = {
  readonly folder: string;
  /** The session's own name, or the folder's where session.json cannot be read. */
  readonly name: string;
  readonly createdAt: string | null;
  readonly isInvented: boolean;
  readonly canOpen: boolean;
};

/**
 * The session folders in `parent`, newest first. A damaged one is listed too, under its folder's name. A parent
 * that does not exist holds none.
 *
 * Errors: disk problems of the parent itself.
 */
export function listSessions(
  parent: string,
  fs: FileSystem = nodeFileSystem,
): Promise<Result<ListedSession[]>> {
  return attempt(parent, async () => {
    const sessions: ListedSession[] = [];
    for (const { name, kind } of await listIfThere(parent, fs)) {
      if (kind !== 'folder' || name.startsWith('.')) continue;
      const listed = await lookAt(join(parent, name), name, fs);
      if (listed) sessions.push(listed);
    }
    return ok(sessions.sort((a, b) => ((a.createdAt ?? '') < (b.createdAt ?? '') ? 1 : -1)));
  });
}

async function lookAt(folder: string, name: string, fs: FileSystem): Promise<ListedSession | null> {
  const loaded = await attempt(folder, () => loadDocument(sessionPlace(folder), (j) => readSession(j), fs));
  if (loaded.ok) {
    const { session } = loaded.value.value;
    const { createdAt, isInvented } = session;
    return { folder, name: session.name, createdAt, isInvented, canOpen: true };
  }
  if (loaded.problems[0].code === 'store/missing') return null;
  return { folder, name, createdAt: null, isInvented: false, canOpen: false };
}
