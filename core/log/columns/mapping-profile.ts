import type { Note } from '../../result/index.ts';
import { type ColumnMapping, fingerprintOfColumns, type MappingProfile, measures } from './column-mapping.ts';

/** Names of the columns that the file itself has, out of a read log's: what a formula made is not mapped. */
export function fileColumns(
  columns: readonly { readonly column: string; readonly reason: Note | null }[],
): string[] {
  return columns.filter((c) => c.reason?.code !== 'log/column-by-formula').map((c) => c.column);
}

/** A person's loggers are few; the oldest corrections go first. */
export const mostProfiles = 100;

/**
 * Corrections that were kept for logs with the same columns, each marked as taken over; empty where there are none.
 * A kept unit that measures nothing any more is left out, lest it keep a log from being read.
 *
 * @param columns  names of the log's columns, in any order
 */
export function correctionsFor(
  profiles: readonly MappingProfile[],
  columns: readonly string[],
): readonly ColumnMapping[] {
  const print = fingerprintOfColumns(columns);
  const profile = profiles.find((p) => p.fingerprint === print);
  const names = new Set(columns);
  return (profile?.columns ?? [])
    .filter((m) => names.has(m.column) && (m.quantity === null || measures(m.unit, m.quantity)))
    .map((m) => ({ ...m, isFromProfile: true as const }));
}

/** The profiles with these corrections laid over what was kept for the same columns, newest first. */
export function withCorrections(
  profiles: readonly MappingProfile[],
  columns: readonly string[],
  corrections: readonly ColumnMapping[],
): MappingProfile[] {
  const fingerprint = fingerprintOfColumns(columns);
  const old = profiles.find((p) => p.fingerprint === fingerprint)?.columns ?? [];
  const fresh = new Set(corrections.map((m) => m.column));
  const kept = [...old.filter((m) => !fresh.has(m.column)), ...corrections].map(
    ({ column, quantity, unit }): ColumnMapping => ({ column, quantity, unit }),
  );
  const others = profiles.filter((p) => p.fingerprint !== fingerprint);
  return [{ fingerprint, columns: kept }, ...others].slice(0, mostProfiles);
}

/** The profiles without what was kept for these columns. */
export function withoutCorrections(
  profiles: readonly MappingProfile[],
  columns: readonly string[],
): MappingProfile[] {
  const fingerprint = fingerprintOfColumns(columns);
  return profiles.filter((p) => p.fingerprint !== fingerprint);
}
