import { fail, ok, type Result } from '../../core/result/index.ts';
import type { ZipFault } from '../../core/session/index.ts';
import type { Reader } from './file-system.ts';
import { isPortableName } from './safe-name.ts';

/** One file in a zip, as its central directory tells; folders are left out. */
export type ZipEntry = {
  readonly path: string;
  readonly isDeflated: boolean;
  readonly crc: number;
  readonly packed: number;
  readonly size: number;
  /** Where its packed bytes begin. */
  readonly start: number;
};

/** What a session may unpack to. Logs pack 5 to 20 times smaller; far beyond that is no log. */
export const zipLimits = { total: 8 * 2 ** 30, ratio: 200, ratioFrom: 100 * 2 ** 20, depth: 8 };

const endLength = 22;
const endSignature = 0x06054b50;
const longestComment = 0xffff;
const entrySignature = 0x02014b50;
const localSignature = 0x04034b50;
/** 65,000 names of full length take less. */
const longestDirectory = 64 << 20;
const isEncrypted = 1;
const linkType = 0xa000;
const typeMask = 0xf000;
/** "Made by" of systems whose upper attribute bits are a Unix mode: Unix and macOS. */
const unixMakers = new Set([3, 19]);

/**
 * The files of a zip, read from its central directory and refused as a whole where any entry is not what an
 * honest zip of a session holds: a path out of it, a link, two entries over each other, far too much.
 *
 * Source: PKWARE, APPNOTE.TXT 6.3.10, sections 4.3.7, 4.3.12, 4.3.16, 4.4.
 * Errors: store/not-a-zip, store/zip-unsafe, store/zip-too-large. Zip64 is told as too large.
 */
export async function readZipDirectory(reader: Reader, name: string): Promise<Result<ZipEntry[]>> {
  const { size } = await reader.state();
  const end = await findEnd(reader, size);
  if (!end) return fail({ code: 'store/not-a-zip', facts: { name } });
  const count = end.getUint16(10, true);
  const length = end.getUint32(12, true);
  const offset = end.getUint32(16, true);
  if (length > longestDirectory || count === 0xffff || length === 0xffffffff || offset === 0xffffffff) {
    return fail({ code: 'store/zip-too-large', facts: { name } });
  }
  if (offset + length > size) return fail({ code: 'store/not-a-zip', facts: { name } });
  const directory = await readAt(reader, offset, length);

  const entries: ZipEntry[] = [];
  const spans: { from: number; to: number; path: string }[] = [];
  const seen = new Set<string>();
  let misnamed: string | null = null;
  let at = 0;
  for (let i = 0; i < count; i++) {
    if (at + 46 > length || directory.getUint32(at, true) !== entrySignature) {
      return fail({ code: 'store/not-a-zip', facts: { name } });
    }
    const entry = entryAt(directory, at);
    at = entry.next;
    const refused = faultOf(entry);
    if (refused) {
      return fail({ code: 'store/zip-unsafe', facts: { name, entry: entry.path, why: refused } });
    }
    const key = entry.path.normalize('NFC').toLowerCase();
    if (seen.has(key)) {
      return fail({ code: 'store/zip-unsafe', facts: { name, entry: entry.path, why: 'twice' } });
    }
    seen.add(key);
    const header = await localHeader(reader, entry, size);
    if (header === null) return fail({ code: 'store/zip-damaged', facts: { name, entry: entry.path } });
    const { start } = header;
    if (!header.isSameName) misnamed ??= entry.path;
    spans.push({ from: entry.local, to: start + entry.packed, path: entry.path });
    if (!entry.path.endsWith('/')) entries.push({ ...entry, start });
  }
  const total = entries.reduce((sum, entry) => sum + entry.size, 0);
  if (total > zipLimits.total || (total > zipLimits.ratioFrom && total > size * zipLimits.ratio)) {
    return fail({ code: 'store/zip-too-large', facts: { name } });
  }
  // Entries that share bytes make little from much: each byte belongs to one entry, and none to the directory.
  spans.sort((a, b) => a.from - b.from);
  for (const [i, span] of spans.entries()) {
    if (span.to > (spans[i + 1]?.from ?? offset)) {
      return fail({ code: 'store/zip-unsafe', facts: { name, entry: span.path, why: 'overlap' } });
    }
  }
  if (misnamed !== null) return fail({ code: 'store/zip-damaged', facts: { name, entry: misnamed } });
  return ok(entries);
}

async function readAt(reader: Reader, position: number, length: number): Promise<DataView> {
  const bytes = new Uint8Array(length);
  let done = 0;
  while (done < length) {
    const read = await reader.read(bytes.subarray(done), position + done);
    if (read === 0) break;
    done += read;
  }
  return new DataView(bytes.buffer);
}

/** The end record stands last, before a comment of at most 64 KB. */
async function findEnd(reader: Reader, size: number): Promise<DataView | null> {
  if (size < endLength) return null;
  const length = Math.min(size, endLength + longestComment);
  const tail = await readAt(reader, size - length, length);
  for (let at = length - endLength; at >= 0; at--) {
    if (tail.getUint32(at, true) !== endSignature) continue;
    if (tail.getUint16(at + 20, true) === length - at - endLength) return new DataView(tail.buffer, at);
  }
  return null;
}

type Told = Omit<ZipEntry, 'start'> & {
  readonly flags: number;
  readonly method: number;
  readonly mode: number;
  readonly local: number;
  readonly nameBytes: Uint8Array;
  readonly next: number;
};

function entryAt(directory: DataView, at: number): Told {
  const nameLength = directory.getUint16(at + 28, true);
  const rest = directory.getUint16(at + 30, true) + directory.getUint16(at + 32, true);
  const bytes = new Uint8Array(directory.buffer, directory.byteOffset + at + 46).subarray(0, nameLength);
  const method = directory.getUint16(at + 10, true);
  const isUnix = unixMakers.has(directory.getUint16(at + 4, true) >> 8);
  return {
    // Not fatal: what is no UTF-8 gets replacement letters and is then a name like any other.
    path: new TextDecoder().decode(bytes),
    nameBytes: bytes,
    flags: directory.getUint16(at + 8, true),
    method,
    isDeflated: method === 8,
    crc: directory.getUint32(at + 16, true),
    packed: directory.getUint32(at + 20, true),
    size: directory.getUint32(at + 24, true),
    mode: isUnix ? directory.getUint32(at + 38, true) >>> 16 : 0,
    local: directory.getUint32(at + 42, true),
    next: at + 46 + nameLength + rest,
  };
}

function faultOf({ path, flags, method, mode }: Told): ZipFault | null {
  // A folder's name ends with a slash; that last empty part is no fault.
  const parts = path.replace(/\/$/, '').split('/');
  const isPlain = parts.length <= zipLimits.depth && parts.every(isPortableName);
  if (!isPlain || parts.some((part) => part === '.' || part === '..')) return 'path';
  if ((mode & typeMask) === linkType) return 'link';
  if ((flags & isEncrypted) !== 0) return 'encrypted';
  return method === 0 || method === 8 ? null : 'method';
}

/**
 * The local header repeats name and extra field in its own lengths; the data comes after them. Where it tells another
 * name than the directory, one flipped bit may have moved a file out of the session.
 */
async function localHeader(
  reader: Reader,
  { local, nameBytes }: Told,
  size: number,
): Promise<{ readonly start: number; readonly isSameName: boolean } | null> {
  if (local + 30 + nameBytes.length > size) return null;
  const header = await readAt(reader, local, 30 + nameBytes.length);
  if (header.getUint32(0, true) !== localSignature) return null;
  const nameLength = header.getUint16(26, true);
  return {
    start: local + 30 + nameLength + header.getUint16(28, true),
    isSameName: nameLength === nameBytes.length && nameBytes.every((b, i) => header.getUint8(30 + i) === b),
  };
}
