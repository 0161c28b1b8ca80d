import { z } from 'zod';
import { type QuantityId, quantityIds } from '../quantity.ts';
import { siScale } from '../si-scale.ts';

/**
 * What a column means, as corrected by hand: stored with a run, and as a profile for logs with the same columns.
 * `quantity` null keeps the column as it stands; `unit` is an id of core/units.
 */
export const ColumnMappingSchema = z.strictObject({
  column: z.string().min(1).max(500),
  quantity: z.enum(quantityIds as [QuantityId, ...QuantityId[]]).nullable(),
  unit: z.string().max(60),
  /** Taken over from an earlier log with the same columns. */
  isFromProfile: z.literal(true).optional(),
});
export type ColumnMapping = z.infer<typeof ColumnMappingSchema>;

/** Corrections for every log with these columns. */
export const MappingProfileSchema = z.strictObject({
  fingerprint: z.string().regex(/^[0-9a-f]{16}$/),
  columns: z.array(ColumnMappingSchema).max(2000),
});
export type MappingProfile = z.infer<typeof MappingProfileSchema>;

/** Whether a unit can measure a quantity. */
export function measures(unit: string, quantity: QuantityId): boolean {
  return siScale(quantity, unit) !== null;
}

/**
 * Sixteen hex digits that are the same for the same set of columns, in any order: the key of a mapping profile.
 * Two 32-bit FNV-1a sums with different starts; a clash costs a wrong suggestion, nothing more.
 *
 * Source: Fowler, Noll, Vo, FNV-1a (offset basis and prime from memory).
 */
export function fingerprintOfColumns(columns: readonly string[]): string {
  const text = [...columns].sort().join('\n');
  return hash(text, 0x811c9dc5) + hash(text, 0x01234567);
}

function hash(text: string, basis: number): string {
  let h = basis;
  for (let i = 0; i < text.length; i++) {
    h = Math.imul(h ^ (text.charCodeAt(i) & 0xff), 0x01000193);
    h = Math.imul(h ^ (text.charCodeAt(i) >> 8), 0x01000193);
  }
  return (h >>> 0).toString(16).padStart(8, '0');
}
