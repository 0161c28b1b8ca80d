import { isAbsolute, relative, resolve, sep } from 'node:path';

/**
 * The absolute path of `parts` under `folder`, or null where they would lead out of it or to the folder itself.
 * Both are resolved first and then compared part by part: `/a/bc` does not lie in `/a/b`.
 */
export function pathInside(folder: string, ...parts: string[]): string | null {
  if (parts.some((part) => part.includes('\0') || part === '' || isAbsolute(part))) return null;
  const root = resolve(folder);
  const target = resolve(root, ...parts);
  const way = relative(root, target);
  if (way === '' || isAbsolute(way) || way.split(sep)[0] === '..') return null;
  return target;
}
