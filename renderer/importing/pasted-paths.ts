import type { PathLog } from './incoming.ts';

/** What a pasted text names on this machine, if it names anything. */
export type Pasted =
  | { readonly type: 'logs'; readonly logs: readonly PathLog[] }
  | { readonly type: 'folder'; readonly folder: string }
  | { readonly type: 'session'; readonly folder: string };

/** From the root, from a drive letter, from a share. */
const fromTop = /^(?:\/|[a-z]:[\\/]|\\\\)[^\n\r]*$/i;
const endingOfFile = /\.[a-z0-9]{1,5}$/i;
const mostPaths = 50;

/**
 * Reads a pasted text as paths, one a line, as file managers copy them: bare, in quotes, or as file addresses. Null
 * for any other text, also where a single line is none. One path without a file's ending is a folder.
 */
export function pastedPaths(text: string): Pasted | null {
  const lines = text
    .split(/\r?\n/)
    .map(bare)
    .filter((line) => line !== '');
  if (lines.length === 0 || lines.length > mostPaths || !lines.every((line) => fromTop.test(line)))
    return null;
  const [only = ''] = lines;
  if (lines.length === 1 && lastPart(only) === 'session.json') {
    return { type: 'session', folder: only.slice(0, -'/session.json'.length) };
  }
  if (lines.length === 1 && !endingOfFile.test(only)) return { type: 'folder', folder: only };
  return { type: 'logs', logs: lines.map((path) => ({ path, name: lastPart(path) })) };
}

function bare(line: string): string {
  const text = line.trim().replace(/^(["'])(.*)\1$/, '$2');
  if (!text.startsWith('file://')) return text;
  try {
    const path = decodeURIComponent(text.slice('file://'.length));
    return path.replace(/^\/([a-z]:)/i, '$1');
  } catch {
    return text;
  }
}

function lastPart(path: string): string {
  return path.split(/[\\/]/).findLast((part) => part !== '') ?? path;
}
