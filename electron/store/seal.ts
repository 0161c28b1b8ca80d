import { isUtf8 } from 'node:buffer';
import { isJsonObject, isTooDeep } from '../../core/session/index.ts';
import { sha256 } from './sha256.ts';

/**
 * The last key of each file that the store writes. It is part of the file, not beside it, so that no crash can
 * separate the two.
 */
export type Seal = { readonly revision: number; readonly savedAt: string };

const blank = '0'.repeat(64);
const sumKey = '"sha256": "';
/** The seal's checksum at the very end of the text. */
const sealEnd = /^"sha256": "([0-9a-f]{64})"\s*\}\s*\}\s*$/;
/** Longer than any such end; keeps the pattern off the rest of the text. */
const longestEnd = 200;

/** A JSON text whose last key holds its revision, its date and the SHA-256 of the text with that hash as zeros. */
export function sealedText(value: Readonly<Record<string, unknown>>, seal: Seal): string {
  const { seal: _, ...content } = value;
  const text = `${JSON.stringify({ ...content, seal: { ...seal, sha256: blank } }, null, 2)}\n`;
  const at = text.lastIndexOf(blank);
  return text.slice(0, at) + sha256(text) + text.slice(at + blank.length);
}

export type Opened = {
  /** The file's content without its seal. */
  readonly json: Record<string, unknown>;
  /** Null where there is none, or where the text is not the one that was sealed. */
  readonly seal: Seal | null;
  /** True where a seal is written, be it intact or not. */
  readonly hasSeal: boolean;
};

/** A sealed or plain JSON file as read; null where it is no JSON object in valid UTF-8. */
export function openSealed(bytes: Uint8Array): Opened | null {
  if (!isUtf8(bytes) || isTooDeep(bytes)) return null;
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length);
  const text = buffer.toString('utf8');
  let parsed: unknown;
  try {
    // Some editors put a byte order mark in front.
    parsed = JSON.parse(text.startsWith('\ufeff') ? text.slice(1) : text);
  } catch {
    return null;
  }
  if (!isJsonObject(parsed)) return null;
  const { seal } = parsed;
  // It stands last, so that taking it out is cheap.
  delete parsed.seal;
  const json = parsed;
  const isIntact =
    // Version control on Windows may have turned every line end; that is no change of content.
    isSealIntact(buffer) ||
    (text.includes('\r\n') && isSealIntact(Buffer.from(text.replaceAll('\r\n', '\n'))));
  if (!isIntact || !isJsonObject(seal)) return { json, seal: null, hasSeal: seal !== undefined };
  const { revision, savedAt } = seal;
  if (typeof revision !== 'number' || typeof savedAt !== 'string') {
    return { json, seal: null, hasSeal: true };
  }
  return { json, seal: { revision, savedAt }, hasSeal: true };
}

function isSealIntact(bytes: Buffer): boolean {
  const at = bytes.lastIndexOf(sumKey);
  if (at < 0 || bytes.length - at > longestEnd) return false;
  const digits = sealEnd.exec(bytes.toString('utf8', at))?.[1];
  if (digits === undefined) return false;
  const from = at + sumKey.length;
  // Blanked in place and put back, which spares a copy of each file.
  bytes.write(blank, from, 'latin1');
  const sum = sha256(bytes);
  bytes.write(digits, from, 'latin1');
  return sum === digits;
}

/**
 * True where `found` differs from `known` only as storage damage differs: same length, and in each differing
 * byte a single bit. An edit by hand nearly always changes the length or several bits of a letter; where it does
 * not (a 4 made a 5), it is taken for damage, because a limit that changes by itself is the worse mistake. Both
 * versions are kept in either case.
 */
export function isBitDamage(found: Uint8Array, known: Uint8Array): boolean {
  if (found.length !== known.length) return false;
  let differing = 0;
  for (let i = 0; i < found.length; i++) {
    const bits = (found[i] ?? 0) ^ (known[i] ?? 0);
    if (bits === 0) continue;
    if ((bits & (bits - 1)) !== 0) return false;
    differing++;
  }
  return differing > 0;
}
