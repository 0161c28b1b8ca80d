import { createHash } from 'node:crypto';
import { endianness } from 'node:os';
import { setImmediate } from 'node:timers/promises';
import { z } from 'zod';
import { fail, ok, type Result } from '../../core/result/index.ts';
import { isJsonObject } from '../../core/session/index.ts';
import { attempt } from './disk-problem.ts';
import { diskError, errorCode, type FileSystem } from './file-system.ts';
import { cachePath } from './layout.ts';
import { type OpenSession, whyNotWritable } from './open-session.ts';
import { type PackedNumbers, packNumbers } from './packed-numbers.ts';
import { replaceFile } from './replace-file.ts';

const magic = 'CHANNELS';
const formatVersion = 2;
const prefixLength = 16;
const hashLength = 32;
/** A cache of more is not made: reading its log again is the lesser evil. */
const longest = 2 ** 31;
/** Bytes hashed at once, some milliseconds' worth. */
const partLength = 1 << 20;
/** Bytes read ahead while as many are hashed. */
const bigPart = 1 << 22;

const HeadSchema = z.object({
  key: z.string(),
  source: z.string(),
  header: z.unknown(),
  arrays: z.array(
    z.object({
      type: z.enum(['f64', 'u8', 'u16']),
      length: z.int().min(0),
      /** Different numbers that the places of a `u16` mean; they stand before them. */
      table: z.int().min(0).max(65536).optional(),
    }),
  ),
});

/** Numbers come back packed where they were long and few of them differed; whoever needs them unpacks them. */
export type CacheArray = Float64Array | Uint8Array | PackedNumbers;

/**
 * What reading a log gave, so that it need not be read again. `key` names everything that the answer depends on
 * besides the log's bytes: the reader's version, the column corrections.
 */
export type ChannelCache = {
  readonly key: string;
  /** Any JSON: column names, units, segments. */
  readonly header: unknown;
  readonly arrays: readonly CacheArray[];
};

/**
 * Writes channels.bin of a run: a JSON head, the arrays on 8-byte borders, a SHA-256 at the end. It may be
 * deleted at any time, so a failure is no loss.
 *
 * Errors: store/no-run, store/read-only and its kin, disk problems.
 */
export function writeChannelCache(
  open: OpenSession,
  runId: string,
  cache: ChannelCache,
): Promise<Result<void>> {
  return attempt(open.folder, async () => {
    const run = open.runs.get(runId);
    if (!run) return fail({ code: 'store/no-run', facts: { runId } });
    const problem = await whyNotWritable(open);
    if (problem) return fail(problem);
    if (endianness() === 'LE') {
      const arrays = await packedArrays(cache.arrays);
      const parts = partsOfCache({ ...cache, arrays }, run.record.sha256);
      await replaceFile(cachePath(open.folder, runId), parts, open.inner.fs);
    }
    return ok(undefined);
  });
}

function* partsOfCache(cache: ChannelCache, source: string): Generator<Uint8Array> {
  const { key, header, arrays } = cache;
  const shapes = arrays.map((array) => {
    if ('table' in array) return { type: 'u16', length: array.places.length, table: array.table.length };
    return { type: array instanceof Float64Array ? 'f64' : 'u8', length: array.length };
  });
  const json = Buffer.from(JSON.stringify({ key, source, header, arrays: shapes }));
  const head = Buffer.concat([json, Buffer.alloc(padding(json.length), ' ')]);
  const prefix = Buffer.alloc(prefixLength);
  prefix.write(magic, 'latin1');
  prefix.writeUInt32LE(formatVersion, 8);
  prefix.writeUInt32LE(head.length, 12);
  const hash = createHash('sha256');
  const plain = arrays.flatMap((array): (Float64Array | Uint8Array | Uint16Array)[] =>
    'table' in array ? [array.table, array.places] : [array],
  );
  const blocks = plain.flatMap((array) => [
    new Uint8Array(array.buffer, array.byteOffset, array.byteLength),
    new Uint8Array(padding(array.byteLength)),
  ]);
  // In parts: the hash of a whole channel of a big log would keep every other request waiting.
  for (const block of [prefix, head, ...blocks])
    for (let at = 0; at < block.length; at += partLength) {
      const part = block.subarray(at, at + partLength);
      hash.update(part);
      yield part;
    }
  yield hash.digest();
}

/** One array at a time, with room for other requests between: a channel of a big log takes some ten milliseconds. */
async function packedArrays(arrays: readonly CacheArray[]): Promise<readonly CacheArray[]> {
  const packed: CacheArray[] = [];
  for (const array of arrays) {
    const small = array instanceof Float64Array ? packNumbers(array) : null;
    packed.push(small ?? array);
    if (array instanceof Float64Array && array.byteLength > partLength) await setImmediate();
  }
  return packed;
}

function padding(length: number): number {
  return (8 - (length % 8)) % 8;
}

/**
 * The cache of a run, or null where there is none, where it was made from other input, or where it is damaged:
 * then the log is simply read again.
 */
export async function readChannelCache(
  open: OpenSession,
  runId: string,
  key: string,
): Promise<ChannelCache | null> {
  const run = open.runs.get(runId);
  if (!run) return null;
  const found = await readCacheFile(cachePath(open.folder, runId), open.inner.fs);
  if (found === 'none' || found === 'damaged') return null;
  return found.cache.key === key && found.source === run.record.sha256 ? found.cache : null;
}

/** A cache file with the hash of the log it was made from. */
export async function readCacheFile(
  path: string,
  fs: FileSystem,
): Promise<{ cache: ChannelCache; source: string } | 'none' | 'damaged'> {
  let read: { bytes: Uint8Array; isIntact: boolean };
  try {
    const size = (await fs.stat(path))?.size ?? 0;
    read = size > partLength ? await readBig(path, size, fs) : await readSmall(path, fs);
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return 'none';
    if (errorCode(error) !== undefined) return 'damaged';
    throw error;
  }
  return read.isIntact ? (decode(read.bytes) ?? 'damaged') : 'damaged';
}

async function readSmall(path: string, fs: FileSystem) {
  const bytes = await fs.readFile(path, longest);
  const bodyLength = Math.max(0, bytes.length - hashLength);
  const hash = createHash('sha256').update(bytes.subarray(0, bodyLength)).digest();
  return { bytes, isIntact: hash.equals(bytes.subarray(bodyLength)) };
}

/** A big file part by part, hashed on the way, into memory that workers share. */
async function readBig(path: string, size: number, fs: FileSystem) {
  if (size > longest) throw diskError('EFBIG', path);
  const bytes = new Uint8Array(new SharedArrayBuffer(size));
  const bodyLength = size - hashLength;
  const hash = createHash('sha256');
  const reader = await fs.openRead(path);
  let at = 0;
  // The last part of the body ends where the hash begins.
  const next = () =>
    reader.read(bytes.subarray(at, at < bodyLength ? Math.min(bodyLength, at + bigPart) : size));
  try {
    let length = await next();
    while (length > 0) {
      const from = at;
      at += length;
      // The next part comes in while this one is hashed.
      const reading = at < size ? next() : Promise.resolve(0);
      if (from < bodyLength) hash.update(bytes.subarray(from, at));
      length = await reading;
    }
  } finally {
    await reader.close();
  }
  return { bytes, isIntact: at === size && hash.digest().equals(bytes.subarray(bodyLength)) };
}

function decode(bytes: Uint8Array): { cache: ChannelCache; source: string } | null {
  const bodyLength = bytes.length - hashLength;
  if (endianness() !== 'LE' || bodyLength < prefixLength) return null;
  const body = bytes.subarray(0, bodyLength);
  const prefix = new DataView(bytes.buffer, bytes.byteOffset, prefixLength);
  const isOurs = Buffer.from(body.subarray(0, 8)).toString('latin1') === magic;
  if (!isOurs || prefix.getUint32(8, true) !== formatVersion) return null;
  const headLength = prefix.getUint32(12, true);
  const head = parseHead(body.subarray(prefixLength, prefixLength + headLength));
  if (!head) return null;
  const arrays: CacheArray[] = [];
  let at = prefixLength + headLength;
  /** The next bytes of the body; null where it ends before. */
  const next = (byteLength: number) => {
    if (at + byteLength > bodyLength) return null;
    const part = body.subarray(at, at + byteLength);
    at += byteLength + padding(byteLength);
    return part;
  };
  for (const { type, length, table = 0 } of head.arrays) {
    const numbers = type === 'u8' ? null : next(8 * (type === 'u16' ? table : length));
    const rest = type === 'f64' ? numbers : next(type === 'u16' ? 2 * length : length);
    if (!rest || (type !== 'u8' && !numbers)) return null;
    if (!numbers) arrays.push(new Uint8Array(rest.buffer, rest.byteOffset, length));
    else if (type === 'f64') arrays.push(numbersOf(numbers));
    else arrays.push({ table: numbersOf(numbers), places: placesOf(rest) });
  }
  return { cache: { key: head.key, header: head.header, arrays }, source: head.source };
}

function parseHead(bytes: Uint8Array): z.infer<typeof HeadSchema> | null {
  try {
    const json: unknown = JSON.parse(new TextDecoder().decode(bytes.slice()));
    const head = HeadSchema.safeParse(json);
    return isJsonObject(json) && head.success ? head.data : null;
  } catch {
    return null;
  }
}

/** A small file is read into a shared pool, where borders may not hold: then the bytes are copied. */
function numbersOf(bytes: Uint8Array): Float64Array {
  const { buffer, byteOffset, byteLength } = byteOffsetFits(bytes, 8) ? bytes : bytes.slice();
  return new Float64Array(buffer, byteOffset, byteLength / 8);
}

function placesOf(bytes: Uint8Array): Uint16Array {
  const { buffer, byteOffset, byteLength } = byteOffsetFits(bytes, 2) ? bytes : bytes.slice();
  return new Uint16Array(buffer, byteOffset, byteLength / 2);
}

function byteOffsetFits(bytes: Uint8Array, border: number): boolean {
  return bytes.byteOffset % border === 0;
}
