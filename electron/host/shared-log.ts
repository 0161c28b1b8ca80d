import type { Log } from '../../core/log/index.ts';

/** The log with all its numbers in memory that workers share: handing it on then copies nothing. */
export function sharedLog(log: Log): Log {
  const seen = new Map<ArrayBufferLike, SharedArrayBuffer>();
  const shared = <T extends Float64Array | Uint8Array>(array: T): T => {
    const { buffer, byteOffset, length } = array;
    if (buffer instanceof SharedArrayBuffer) return array;
    // Time is a channel as well.
    const copy = seen.get(buffer) ?? new SharedArrayBuffer(buffer.byteLength);
    if (!seen.has(buffer)) new Uint8Array(copy).set(new Uint8Array(buffer));
    seen.set(buffer, copy);
    const make = array.constructor as new (b: ArrayBufferLike, at: number, n: number) => T;
    return new make(copy, byteOffset, length);
  };
  return {
    ...log,
    time: shared(log.time),
    channels: log.channels.map((c) => ({ ...c, values: shared(c.values), flags: shared(c.flags) })),
  };
}
