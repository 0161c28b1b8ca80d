import { randomBytes } from 'node:crypto';
import { basename, dirname, join } from 'node:path';
import type { FileSystem } from './file-system.ts';
import { nodeFileSystem } from './node-file-system.ts';

/** Marks a file that a write was interrupted in: never acknowledged, removed when the session is opened. */
const unfinishedName = /^\.unfinished-[0-9a-f]{12}-/;

export function isUnfinished(name: string): boolean {
  return unfinishedName.test(name);
}

/** A name that nobody else has; `what` is only for the reader of a folder listing. */
export function unfinishedNameFor(what: string): string {
  // The name may be as long as the system allows already, so the front part must not add to it.
  return `.unfinished-${randomBytes(6).toString('hex')}-${what.slice(-40)}`;
}

/** The `what` of an unfinished name. */
export function madeFrom(unfinished: string): string {
  return unfinished.replace(unfinishedName, '');
}

/** Content of a file: all at once, or in parts. */
export type Content = string | Uint8Array | Iterable<Uint8Array> | AsyncIterable<Uint8Array>;

/**
 * Creates or replaces a file so that at each instant either the whole old or the whole new content stands, also
 * after a power cut. When this returns, the new content is durable.
 *
 * Order matters: content to disk before the name points at it, the name to disk before anyone is told.
 *
 * Errors: thrown as by FileSystem; the old content then still stands.
 */
export async function replaceFile(
  path: string,
  content: Content,
  fs: FileSystem = nodeFileSystem,
): Promise<void> {
  await putInPlace(path, fs, (unfinished) => writeDurably(unfinished, content, fs));
  await fs.syncFolder(dirname(path));
}

/** Writes under an unfinished name in the same folder, then gives it its own in one step. */
async function putInPlace(
  path: string,
  fs: FileSystem,
  write: (unfinished: string) => Promise<void>,
): Promise<void> {
  const unfinished = join(dirname(path), unfinishedNameFor(basename(path)));
  try {
    await write(unfinished);
    await fs.rename(unfinished, path);
  } catch (error) {
    // A full disk should not be kept full by our own leavings. Where this fails too, opening cleans up.
    await fs.removeFile(unfinished).catch(() => undefined);
    throw error;
  }
}

/** Writes a new file and flushes its content; its name is durable only after a `syncFolder`. */
export async function writeDurably(path: string, content: Content, fs: FileSystem): Promise<void> {
  const writer = await fs.createNew(path);
  try {
    if (typeof content === 'string') await writer.write(new TextEncoder().encode(content));
    else if (content instanceof Uint8Array) await writer.write(content);
    else for await (const part of content) await writer.write(part);
    await writer.sync();
  } finally {
    await writer.close();
  }
}

/**
 * As replaceFile, without any flush: for what means nothing after a power cut, that is, locks. A torn one counts
 * as dead.
 */
export async function placeFile(path: string, content: string, fs: FileSystem): Promise<void> {
  await putInPlace(path, fs, async (unfinished) => {
    const writer = await fs.createNew(unfinished);
    try {
      await writer.write(new TextEncoder().encode(content));
    } finally {
      await writer.close();
    }
  });
}
