import type { LogStyle } from '../channel.ts';
import { dosCodePages } from './dos-code-pages.ts';

// Neither DOM nor Node types exist here, but every host of ours has this class.
declare class TextDecoder {
  constructor(label?: string, options?: { fatal?: boolean; ignoreBOM?: boolean });
  decode(bytes?: Uint8Array, options?: { stream?: boolean }): string;
}
declare class TextEncoder {
  encode(text: string): Uint8Array;
}

export type Encoding = LogStyle['encoding'];

/** Encoding of a text, and how many bytes its mark takes. */
export type FoundEncoding = { readonly encoding: Encoding; readonly markLength: number };

/**
 * Encoding from the byte order mark, else from where the zero bytes stand, else from whether the bytes are
 * valid UTF-8; null for what is left, one byte a character (encoding-by-words).
 *
 * @param head  the first bytes of the file; a character cut at the end does not count
 */
export function findEncoding(head: Uint8Array): FoundEncoding | null {
  if (head[0] === 0xef && head[1] === 0xbb && head[2] === 0xbf) return { encoding: 'utf-8', markLength: 3 };
  if (head[0] === 0xff && head[1] === 0xfe) return { encoding: 'utf-16le', markLength: 2 };
  if (head[0] === 0xfe && head[1] === 0xff) return { encoding: 'utf-16be', markLength: 2 };
  const wide = wideWithoutMark(head);
  if (wide) return { encoding: wide, markLength: 0 };
  return isUtf8(head) ? { encoding: 'utf-8', markLength: 0 } : null;
}

/** A log is mostly ASCII, so in UTF-16 nearly every second byte is zero and hardly any of the others. */
function wideWithoutMark(head: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  const pairs = Math.min(head.length, 4096) >> 1;
  if (pairs < 4) return null;
  let evenZeros = 0;
  let oddZeros = 0;
  for (let i = 0; i < pairs; i++) {
    if (head[2 * i] === 0) evenZeros++;
    if (head[2 * i + 1] === 0) oddZeros++;
  }
  if (oddZeros > 0.7 * pairs && evenZeros < 0.05 * pairs) return 'utf-16le';
  if (evenZeros > 0.7 * pairs && oddZeros < 0.05 * pairs) return 'utf-16be';
  return null;
}

function isUtf8(head: Uint8Array): boolean {
  // `stream` forgives a character that the end of the head cuts.
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(head, { stream: true });
    return true;
  } catch {
    return false;
  }
}

/** Bytes to text; bytes that mean nothing in the encoding become U+FFFD. */
export function decodeText(bytes: Uint8Array, encoding: Encoding): string {
  if (encoding === 'cp437' || encoding === 'cp850' || encoding === 'cp852')
    return decodeDos(bytes, dosCodePages[encoding]);
  return new TextDecoder(encoding, { ignoreBOM: true }).decode(bytes);
}

/** The pages agree with windows-1252 in ASCII; only what lies beyond it is set anew. */
function decodeDos(bytes: Uint8Array, upper: string): string {
  const text = new TextDecoder('windows-1252').decode(bytes);
  return text.replace(/[^\0-\x7f]/g, (_, at: number) => upper[(bytes[at] as number) - 0x80] as string);
}

/** Turns chunks of UTF-16 or Shift_JIS, which may cut a character, into UTF-8, so that one byte reader serves all. */
export function wideToUtf8(encoding: Encoding): (chunk: Uint8Array, isLast: boolean) => Uint8Array {
  const decoder = new TextDecoder(encoding, { ignoreBOM: true });
  const encoder = new TextEncoder();
  return (chunk, isLast) => encoder.encode(decoder.decode(chunk, { stream: !isLast }));
}
