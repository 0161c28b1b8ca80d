import { z } from 'zod';
import { ColumnMappingSchema } from '../log/index.ts';
import { ConditionsSchema } from '../power/index.ts';

/** Ids stand in paths, so their alphabet is narrow: lower-case letters, digits and hyphens. */
export const IdSchema = z.string().regex(/^[a-z0-9][a-z0-9-]{0,63}$/);
export const Sha256Schema = z.string().regex(/^[0-9a-f]{64}$/);

/**
 * What a person did to a pull. A pull is named by a moment inside it, which survives a better pull finder;
 * nothing is ever deleted, so a restored pull comes back as it was found.
 */
export const PullEditSchema = z.looseObject({
  at_s: z.number(),
  action: z.enum(['drop', 'restore', 'trim', 'add']),
  from_s: z.number().nullable().default(null),
  to_s: z.number().nullable().default(null),
  reason: z.string().max(2000).default(''),
});
export type PullEdit = z.infer<typeof PullEditSchema>;

/** Which way the pulls of a run went on the road: all of them, or the first, each next one the other way. */
export const RunDirectionSchema = z.enum(['out', 'back', 'out-first', 'back-first']);
export type RunDirection = z.infer<typeof RunDirectionSchema>;

/** Way of a run's nth pull, counted from 0 over all that were found in its log: 1 out, -1 back, null not said. */
export function wayOfPull(direction: RunDirection | null, n: number): 1 | -1 | null {
  if (direction === null) return null;
  const first = direction === 'out' || direction === 'out-first' ? 1 : -1;
  const turns = direction === 'out-first' || direction === 'back-first';
  return turns && n % 2 === 1 ? (-first as 1 | -1) : first;
}

/** runs/<id>/run.json. The log beside it is never changed; this record says how to read it. */
export const RunRecordSchema = z.looseObject({
  schemaVersion: z.literal(1),
  id: IdSchema,
  /** Name of the file as it was imported, for people; never used as a path. */
  name: z.string().max(1000),
  importedAt: z.iso.datetime(),
  size_bytes: z.int().min(0),
  sha256: Sha256Schema,
  columns: z.array(ColumnMappingSchema).default([]),
  pullEdits: z.array(PullEditSchema).default([]),
  note: z.string().max(20_000).default(''),
  /** Null: as the session's. */
  conditions: ConditionsSchema.nullable().default(null),
  /** Direction on the road, for two-way averaging. */
  direction: RunDirectionSchema.nullable().default(null),
});
export type RunRecord = z.infer<typeof RunRecordSchema>;
