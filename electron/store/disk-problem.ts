import { fail, type Problem, type Result } from '../../core/result/index.ts';
import { errorCode, type FileSystem } from './file-system.ts';

/** Codes of a drive, share or folder that went away under us. */
const gone = new Set([
  'EIO',
  'ENXIO',
  'ENODEV',
  'ESTALE',
  'ENOTCONN',
  'EHOSTDOWN',
  'ENETUNREACH',
  'ETIMEDOUT',
]);

/** What a failed disk operation means to a person; null for anything that is not the disk's doing. */
export function problemOf(error: unknown, path: string): Problem | null {
  const code = errorCode(error);
  if (code === undefined || !/^E[A-Z0-9]+$/.test(code)) return null;
  if (gone.has(code)) return { code: 'store/folder-gone', facts: { path } };
  switch (code) {
    case 'ENOENT':
    case 'ENOTDIR':
      return { code: 'store/missing', facts: { path } };
    case 'EACCES':
    case 'EPERM':
      return { code: 'store/not-allowed', facts: { path } };
    case 'EROFS':
      return { code: 'store/disk-read-only', facts: { path } };
    case 'ENOSPC':
    case 'EDQUOT':
      return { code: 'store/disk-full', facts: { path } };
    case 'EEXIST':
    case 'ENOTEMPTY':
      return { code: 'store/already-there', facts: { path } };
    case 'ENAMETOOLONG':
      return { code: 'store/name-too-long', facts: { path } };
    case 'EISDIR':
      return { code: 'store/is-a-folder', facts: { path } };
    case 'ELOOP':
      return { code: 'store/not-a-plain-file', facts: { path } };
    case 'EFBIG':
      return { code: 'store/too-large', facts: { path } };
    default:
      return { code: 'store/disk-error', facts: { path, code } };
  }
}

/**
 * Runs an action on the disk; what the disk refused comes back as a Problem that names `path`. Anything else is
 * our own mistake and is thrown on.
 */
export async function attempt<T>(path: string, action: () => Promise<Result<T>>): Promise<Result<T>> {
  try {
    return await action();
  } catch (error) {
    const problem = problemOf(error, path);
    if (problem) return fail(problem);
    throw error;
  }
}

/**
 * As attempt, for what is written into `folder`: where that is not there, it is the folder that is told and not
 * the file that was to stand in it.
 */
export async function attemptInto<T>(
  folder: string,
  path: string,
  fs: FileSystem,
  action: () => Promise<Result<T>>,
): Promise<Result<T>> {
  const done = await attempt(path, action);
  if (done.ok || done.problems[0].code !== 'store/missing') return done;
  return attempt(path, async () =>
    (await fs.stat(folder)) === null ? fail({ code: 'store/no-folder', facts: { path: folder } }) : done,
  );
}
