import { existsSync, statSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';

/**
 * The session folder that a command line names: the last word that is a session's folder, or its session.json
 * as dropped on the icon. Chromium adds switches of its own, which are passed over.
 *
 * @param words  command line without the program, as given by the system
 * @param folder where relative names start
 */
export function askedFolder(words: readonly string[], folder: string): string | undefined {
  for (const word of words.toReversed()) {
    if (word.startsWith('-')) continue;
    const found = sessionFolder(resolve(folder, word));
    if (found) return found;
  }
  return undefined;
}

/** The folder itself, or the folder of a session.json; undefined for anything else. */
export function sessionFolder(path: string): string | undefined {
  if (!existsSync(path)) return undefined;
  if (statSync(path).isDirectory()) return existsSync(join(path, 'session.json')) ? path : undefined;
  return basename(path) === 'session.json' ? dirname(path) : undefined;
}
