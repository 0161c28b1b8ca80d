import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import { NoteSchema } from '../../core/contract/index.ts';
import { type Log, quantityIds } from '../../core/log/index.ts';
import type { RunRecord } from '../../core/session/index.ts';
import type { CacheArray, ChannelCache } from '../store/index.ts';

const StyleSchema = z.object({
  encoding: z.enum(['utf-8', 'utf-16le', 'utf-16be', 'windows-1252']),
  delimiter: z.string(),
  decimal: z.enum(['.', ',']),
  headerLine: z.number(),
  firstDataLine: z.number(),
  timeFormat: z.enum(['s', 'ms', 'min', 'us', 'clock', 'iso', 'sample-rate']),
});

const HeaderSchema = z.object({
  file: z.string(),
  channels: z.array(
    z.object({
      column: z.string(),
      quantity: z.enum(quantityIds).nullable(),
      unit: z.string(),
      confidence: z.number(),
      reason: NoteSchema.nullable(),
    }),
  ),
  segments: z.array(z.object({ from: z.number(), to: z.number() })),
  warnings: z.array(NoteSchema),
  style: StyleSchema,
});

let fingerprint: string | null = null;

/**
 * Changes whenever the reader's own code does, so that no cache outlives the reader that made it and nobody has
 * to remember a number. A packaged program has no sources beside it; there its version stands in.
 */
export function readerFingerprint(programVersion: string): string {
  fingerprint ??= fingerprintOfSources() ?? programVersion;
  return fingerprint;
}

function fingerprintOfSources(): string | null {
  try {
    const folder = new URL('../../core/log/', import.meta.url);
    const hash = createHash('sha256');
    const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((n) => n.endsWith('.ts'));
    for (const name of names.sort())
      hash.update(name).update(readFileSync(join(fileURLToPath(folder), name)));
    return hash.digest('hex');
  } catch {
    return null;
  }
}

/** Everything besides the log's bytes that its channels depend on. */
export function cacheKey(record: RunRecord, programVersion: string): string {
  return JSON.stringify([readerFingerprint(programVersion), record.columns]);
}

/** A log as it goes into the cache. */
export function cacheOfLog(log: Log, key: string): ChannelCache {
  const { file, segments, warnings, style } = log;
  const channels = log.channels.map(({ values: _values, flags: _flags, ...head }) => head);
  const arrays: CacheArray[] = [log.time, ...log.channels.flatMap((c) => [c.values, c.flags])];
  return { key, header: { file, channels, segments, warnings, style }, arrays };
}

/** The log back from the cache; null where it does not fit, which is no loss. */
export function logOfCache(cache: ChannelCache): Log | null {
  const head = HeaderSchema.safeParse(cache.header);
  const [time, ...rest] = cache.arrays;
  if (!head.success || !(time instanceof Float64Array)) return null;
  const channels: Log['channels'][number][] = [];
  for (const [i, channel] of head.data.channels.entries()) {
    const values = rest[2 * i];
    const flags = rest[2 * i + 1];
    if (!(values instanceof Float64Array) || !(flags instanceof Uint8Array)) return null;
    if (values.length !== time.length || flags.length !== time.length) return null;
    channels.push({ ...channel, values, flags });
  }
  return { ...head.data, time, channels };
}
