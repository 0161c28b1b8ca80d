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
  /** Of the car; null where session.json cannot be read. */
  readonly carName: string | null;
  readonly createdAt: string | null;
  readonly isInvented: boolean;
  readonly canOpen: boolean;
};

/**
 * The session folders in all `parents`, newest first. A damaged one is listed too, under its folder's name. A
 * parent that does not exist holds none. After the first, a parent that is a link is passed over: people move a
 * folder and leave a link to it, and every session would stand twice.
 *
 * Errors: disk problems of the first parent that cannot be read.
 */
export async function listSessions(
  parents: readonly string[],
  fs: FileSystem = nodeFileSystem,
): Promise<Result<ListedSession[]>> {
  const sessions: ListedSession[] = [];
  for (const [index, parent] of parents.entries()) {
    const listed = await attempt(parent, async () => {
      const isLink = index > 0 && (await fs.stat(parent))?.kind === 'other';
      return isLink ? ok([]) : sessionsIn(parent, fs);
    });
    if (!listed.ok) return listed;
    sessions.push(...listed.value);
  }
  return ok(sessions.sort((a, b) => ((a.createdAt ?? '') < (b.createdAt ?? '') ? 1 : -1)));
}

async function sessionsIn(parent: string, fs: FileSystem): Promise<Result<ListedSession[]>> {
  const sessions: ListedSession[] = [];
  for (const { name, kind } of await listIfThere(parent, fs)) {
    if (kind !== 'folder' || name.startsWith('.')) continue;
    const listed = await lookAt(join(parent, name), name, fs);
    if (listed) sessions.push(listed);
  }
  return ok(sessions);
}

async function lookAt(folder: string, name: string, fs: FileSystem): Promise<ListedSession | null> {
  const loaded = await attempt(folder, () => loadDocument(sessionPlace(folder), (j) => readSession(j), fs));
  if (loaded.ok) {
    const { session } = loaded.value.value;
    const { createdAt, isInvented } = session;
    return { folder, name: session.name, carName: session.car.name, createdAt, isInvented, canOpen: true };
  }
  if (loaded.problems[0].code === 'store/missing') return null;
  return { folder, name, carName: null, createdAt: null, isInvented: false, canOpen: false };
}
