import { readdirSync, realpathSync } from 'node:fs';
import { extname, join, relative, sep } from 'node:path';

const contentTypes: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.wasm': 'application/wasm',
};

export type BuiltFile = { readonly path: string; readonly contentType: string; readonly isHashed: boolean };

/**
 * The files of the built screens by their path in a URL, read once. Only what is on this list is ever opened,
 * so no spelling of a path leads anywhere else. Links that point out of the folder, and files of a kind that
 * screens have no use for, are not on it.
 *
 * @param folder built screens, holding index.html
 */
export function listBuiltFiles(folder: string): ReadonlyMap<string, BuiltFile> {
  const root = realpathSync(folder);
  const found = new Map<string, BuiltFile>();
  for (const path of filesUnder(root)) {
    const contentType = contentTypes[extname(path)];
    if (contentType === undefined || !realpathSync(path).startsWith(root + sep)) continue;
    const name = relative(root, path).split(sep).join('/');
    // The build puts a hash of the content into the names of these.
    found.set(name, { path, contentType, isHashed: name.startsWith('assets/') });
  }
  const index = found.get('index.html');
  if (index) found.set('', index);
  return found;
}

/** Walked by hand: inside a packed program Electron's own file system answers, which knows the plain calls only. */
function filesUnder(folder: string): readonly string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return filesUnder(path);
    return entry.isFile() ? [path] : [];
  });
}

/** The path below `base` as the list spells it, or undefined for a path that does not decode. */
export function nameInUrl(pathname: string, base: string): string | undefined {
  if (!pathname.startsWith(base)) return undefined;
  try {
    return decodeURIComponent(pathname.slice(base.length));
  } catch {
    return undefined;
  }
}
