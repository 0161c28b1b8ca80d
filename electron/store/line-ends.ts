import type { FileSystem } from './file-system.ts';
import type { SeenFile } from './settle-detector.ts';

const [lineFeed, carriageReturn] = [10, 13];

/**
 * Says of files whether they end in a whole line. One byte of each is read, and again only once it has changed;
 * what can't be read, as while its writer holds it, counts as no.
 *
 * @returns  a function from a path, its file and whether to look at all: a file that is left alone now is looked
 *   at once it has changed
 */
export function createLineEnds(
  fs: FileSystem,
): (path: string, file: SeenFile, isAsked: boolean) => Promise<boolean> {
  const known = new Map<string, { size: number; modified_ms: number; endsLine: boolean }>();
  return async (path, { size, modified_ms }, isAsked) => {
    const before = known.get(path);
    if (before && before.size === size && before.modified_ms === modified_ms) return before.endsLine;
    const last = isAsked ? await lastByte(path, size, fs).catch(() => null) : null;
    const endsLine = last === lineFeed || last === carriageReturn;
    known.set(path, { size, modified_ms, endsLine });
    return endsLine;
  };
}

async function lastByte(path: string, size: number, fs: FileSystem): Promise<number | null> {
  if (size === 0) return null;
  const reader = await fs.openRead(path);
  try {
    const byte = new Uint8Array(1);
    const count = await reader.read(byte, size - 1);
    return count === 1 ? (byte[0] ?? null) : null;
  } finally {
    await reader.close();
  }
}
