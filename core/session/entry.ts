import { z } from 'zod';
import { changeKinds } from '../compare/index.ts';
import { ConditionsSchema } from '../power/index.ts';
import { TypedValueSchema } from '../units/index.ts';
import { IdSchema } from './run-record.ts';
import { TableChangeSchema } from './session-table.ts';

export const entryKinds = ['baseline', ...changeKinds] as const;
export type EntryKind = (typeof entryKinds)[number];

/** The declared change as typed: from, to, and where it applies in the tuner's words ("above 4,400 rpm"). */
export const ChangeSchema = z.looseObject({
  from: TypedValueSchema.nullable().default(null),
  to: TypedValueSchema.nullable().default(null),
  where: z.string().max(200).default(''),
  /** Cell by cell, where it was made in a table of the session; left out elsewhere. */
  table: TableChangeSchema.optional(),
});
export type Change = z.infer<typeof ChangeSchema>;

/** One line of the ledger: entry 0 is the baseline, every later one is one change. */
export const EntrySchema = z.looseObject({
  id: IdSchema,
  kind: z.enum(entryKinds),
  /** Empty: the title is made from kind and change, in the reader's language and units. */
  title: z.string().max(200).default(''),
  change: ChangeSchema.nullable().default(null),
  /** The entry it is judged against; null is the last kept one before it. */
  against: IdSchema.nullable().default(null),
  /** Runs that hold its pulls; a window where one run covers several entries. */
  runs: z
    .array(
      z.looseObject({
        runId: IdSchema,
        from_s: z.number().nullable().default(null),
        to_s: z.number().nullable().default(null),
      }),
    )
    .default([]),
  /** A dropped entry stays in the book; the next change stands on the last kept one. */
  state: z.enum(['kept', 'dropped']).default('kept'),
  note: z.string().max(20_000).default(''),
  /** Never printed in the handover. */
  privateNote: z.string().max(20_000).default(''),
  createdAt: z.iso.datetime(),
  conditions: ConditionsSchema.nullable().default(null),
});
export type Entry = z.infer<typeof EntrySchema>;
