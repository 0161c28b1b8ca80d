import { fail, ok, type Result } from '../result/index.ts';
import { type Logo, largestLogo_bytes } from '../session/index.ts';

type Size = { readonly width: number; readonly height: number };

const pngSignature = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

function startsWith(bytes: Uint8Array, signature: readonly number[]): boolean {
  return signature.every((b, i) => bytes[i] === b);
}

/** PNG: the first chunk is IHDR and holds both sides. Source: ISO/IEC 15948, 11.2.2. */
function pngSize(bytes: Uint8Array): Size | null {
  if (bytes.length < 24 || String.fromCharCode(...bytes.subarray(12, 16)) !== 'IHDR') return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return { width: view.getUint32(16), height: view.getUint32(20) };
}

/** JPEG: the frame header among the marker segments. Source: ITU-T T.81, B.2.2. */
function jpegSize(bytes: Uint8Array): Size | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = 2;
  while (at + 9 < bytes.length && bytes[at] === 0xff) {
    const marker = bytes[at + 1] ?? 0;
    // Start of frame, but for the three marks that share its row: tables, arithmetic conditioning, extension.
    const isFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
    if (isFrame) return { height: view.getUint16(at + 5), width: view.getUint16(at + 7) };
    at += 2 + view.getUint16(at + 2);
  }
  return null;
}

const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** RFC 4648, section 4. Core has neither Node nor a browser to ask for it. */
export function base64(bytes: Uint8Array): string {
  let out = '';
  for (let i = 0; i < bytes.length; i += 3) {
    const [a = 0, b = 0, c = 0] = bytes.subarray(i, i + 3);
    const bits = (a << 16) | (b << 8) | c;
    const letters = [18, 12, 6, 0].map((shift) => alphabet[(bits >> shift) & 63]);
    const left = bytes.length - i;
    out += `${letters[0]}${letters[1]}${left > 1 ? letters[2] : '='}${left > 2 ? letters[3] : '='}`;
  }
  return out;
}

/** A drawing in XML: it can carry script and calls to elsewhere, and looks like a picture to whoever picks it. */
function isDrawing(bytes: Uint8Array): boolean {
  const head = new Uint8Array(bytes.subarray(0, 1000)).reduce((text, b) => text + String.fromCharCode(b), '');
  return /<svg|<!doctype svg|<\?xml/i.test(head);
}

/**
 * A logo from the bytes of a file that somebody chose. What it is follows from its first bytes, not from its name.
 *
 * Errors: handover/logo-is-drawing, handover/logo-not-a-picture, handover/logo-damaged, handover/logo-too-large,
 *         each naming the file.
 */
export function readLogo(bytes: Uint8Array, name: string): Result<Logo> {
  const where = { file: name };
  if (isDrawing(bytes)) return fail({ code: 'handover/logo-is-drawing', facts: {}, where });
  const isPng = startsWith(bytes, pngSignature);
  if (!isPng && !startsWith(bytes, [0xff, 0xd8, 0xff]))
    return fail({ code: 'handover/logo-not-a-picture', facts: {}, where });
  if (bytes.length > largestLogo_bytes) {
    const facts = { size_bytes: bytes.length, most_bytes: largestLogo_bytes };
    return fail({ code: 'handover/logo-too-large', facts, where });
  }
  const size = isPng ? pngSize(bytes) : jpegSize(bytes);
  // 20,000 dots a side: no sheet of paper prints more, and a decoder may fall over it.
  if (!size || size.width < 1 || size.height < 1 || size.width > 20_000 || size.height > 20_000)
    return fail({ code: 'handover/logo-damaged', facts: {}, where });
  const dataUrl = `data:image/${isPng ? 'png' : 'jpeg'};base64,${base64(bytes)}`;
  return ok({ name: name.slice(0, 200), dataUrl, ...size });
}
