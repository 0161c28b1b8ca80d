import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import { NoteSchema } from '../../core/contract/index.ts';
import { type Log, logEncodings, quantityIds } from '../../core/log/index.ts';
import type { RunAnalysis, RunRecord, Session } from '../../core/session/index.ts';
import { type CacheArray, type ChannelCache, unpackNumbers } from '../store/index.ts';
import { AnalysisHeadSchema, analysisOfHead, headOfAnalysis } from './analysis-cache.ts';

const StyleSchema = z.object({
  encoding: z.enum(logEncodings),
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
  segments: z.array(z.object({ from: z.number(), to: z.number(), countedOn_s: z.number().optional() })),
  warnings: z.array(NoteSchema),
  style: StyleSchema,
  analysis: AnalysisHeadSchema.nullable(),
});

const fingerprints = new Map<string, string>();

/**
 * Changes whenever the reader's own code does, so that no cache outlives the reader that made it and nobody has
 * to remember a number. A packaged program has no sources beside it; there its version stands in.
 */
export function readerFingerprint(programVersion: string): string {
  return fingerprintOf(['log'], programVersion);
}

function fingerprintOf(folders: readonly string[], programVersion: string): string {
  const name = folders.join();
  const found = fingerprints.get(name) ?? fingerprintOfSources(folders) ?? programVersion;
  fingerprints.set(name, found);
  return found;
}

function fingerprintOfSources(folders: readonly string[]): string | null {
  try {
    const hash = createHash('sha256');
    for (const folder of folders) {
      const place = fileURLToPath(new URL(`../../core/${folder}/`, import.meta.url));
      const names = readdirSync(place, { recursive: true, encoding: 'utf8' }).filter((n) =>
        n.endsWith('.ts'),
      );
      for (const name of names.sort()) hash.update(name).update(readFileSync(join(place, name)));
    }
    return hash.digest('hex');
  } catch {
    return null;
  }
}

/** Everything besides the log's bytes that its channels depend on. */
export function cacheKey(record: RunRecord, programVersion: string): string {
  return JSON.stringify([readerFingerprint(programVersion), record.columns]);
}

/** Everything besides the log's bytes that its pulls and their power depend on. */
export function analysisKey(record: RunRecord, session: Session, programVersion: string): string {
  const { columns, pullEdits, conditions } = record;
  const sources = fingerprintOf(['log', 'power', 'session', 'units'], programVersion);
  return JSON.stringify([sources, columns, pullEdits, conditions ?? session.conditions, session.car]);
}

/** Stands for flags that say nothing of any sample: nine columns in ten, a ninth of the file. */
const noFlags = new Uint8Array(0);

/** @param known  what was found before; columns without a flag share their memory */
function isBlank(flags: Uint8Array, known: Map<ArrayBufferLike, boolean>): boolean {
  const found = known.get(flags.buffer);
  if (found !== undefined && flags.byteOffset === 0) return found;
  let i = 0;
  while (i < flags.length && flags[i] === 0) i++;
  const isAll = i === flags.length;
  // A cache read back keeps all its columns in one buffer: there each speaks for itself.
  if (flags.byteLength === flags.buffer.byteLength) known.set(flags.buffer, isAll);
  return isAll;
}

/** A log as it goes into the cache, with what was found in it where that is known. */
export function cacheOfLog(
  log: Log,
  key: string,
  analysed: { readonly analysis: RunAnalysis; readonly key: string } | null = null,
): ChannelCache {
  const { file, segments, warnings, style } = log;
  const channels = log.channels.map(({ values: _values, flags: _flags, ...head }) => head);
  const found = analysed && headOfAnalysis(analysed.analysis, analysed.key);
  const known = new Map<ArrayBufferLike, boolean>();
  const arrays: CacheArray[] = [
    log.time,
    ...log.channels.flatMap((c) => [c.values, isBlank(c.flags, known) ? noFlags : c.flags]),
    ...(found?.arrays ?? []),
  ];
  const analysis = found?.head ?? null;
  return { key, header: { file, channels, segments, warnings, style, analysis }, arrays };
}

/** The analysis of a log back from its cache; null where none was kept under this key. */
export function analysisOfCache(cache: ChannelCache, log: Log, key: string): RunAnalysis | null {
  const head = HeaderSchema.safeParse(cache.header);
  if (!head.success || head.data.analysis?.key !== key) return null;
  return analysisOfHead(log, head.data.analysis, cache.arrays.slice(1 + 2 * log.channels.length));
}

/** A channel whose numbers are unpacked when they are first asked for: most of a log's are never looked at. */
function channelOf(
  head: Omit<Log['channels'][number], 'values' | 'flags'>,
  packed: Exclude<CacheArray, Uint8Array>,
  flags: Uint8Array,
): Log['channels'][number] {
  if (packed instanceof Float64Array) return { ...head, values: packed, flags };
  let values: Float64Array | null = null;
  return {
    ...head,
    get values() {
      values ??= unpackNumbers(packed);
      return values;
    },
    flags,
  };
}

/** The log back from the cache; null where it does not fit, which is no loss. */
export function logOfCache(cache: ChannelCache): Log | null {
  const head = HeaderSchema.safeParse(cache.header);
  const [first, ...rest] = cache.arrays;
  if (!head.success || !first || first instanceof Uint8Array) return null;
  const time = 'table' in first ? unpackNumbers(first) : first;
  const channels: Log['channels'][number][] = [];
  const blank = new Uint8Array(new SharedArrayBuffer(time.length));
  for (const [i, channel] of head.data.channels.entries()) {
    const values = rest[2 * i];
    const flags = rest[2 * i + 1];
    if (!values || values instanceof Uint8Array || !(flags instanceof Uint8Array)) return null;
    const isWhole = flags.length === time.length || flags.length === 0;
    if (('table' in values ? values.places : values).length !== time.length || !isWhole) return null;
    channels.push(channelOf(channel, values, flags.length === 0 ? blank : flags));
  }
  const { analysis: _, ...plain } = head.data;
  return { ...plain, time, channels };
}
