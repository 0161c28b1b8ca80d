import { createHash, hash } from 'node:crypto';
import type { FileSystem, Reader } from './file-system.ts';

/** Bytes read and hashed at once, a millisecond's worth or less. */
const partLength = 1 << 18;

/** SHA-256 as 64 lower-case hex digits. */
export function sha256(content: string | Uint8Array): string {
  return hash('sha256', content, 'hex');
}

/** Content of an open reader in parts; each part is only good until the next is asked for. */
export async function* partsOf(reader: Reader): AsyncGenerator<Uint8Array> {
  const part = new Uint8Array(partLength);
  for (;;) {
    const length = await reader.read(part);
    if (length === 0) return;
    yield part.subarray(0, length);
  }
}

/** SHA-256 and length of a file, read in parts. */
export async function sha256OfFile(
  path: string,
  fs: FileSystem,
  options: { readonly followLinks?: boolean } = {},
): Promise<{ sha256: string; size: number }> {
  const hash = createHash('sha256');
  let size = 0;
  const reader = await fs.openRead(path, options);
  try {
    for await (const part of partsOf(reader)) {
      hash.update(part);
      size += part.length;
    }
  } finally {
    await reader.close();
  }
  return { sha256: hash.digest('hex'), size };
}
