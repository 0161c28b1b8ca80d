import { z } from 'zod';
import { quantityIds } from '../log/index.ts';
import { RunRecordSchema, SessionSchema } from '../session/index.ts';
import { NoteSchema, ProblemSchema } from './wire.ts';

/** One pull as found and as edited. `id` holds while the log and its mapping hold. */
export const PullSummarySchema = z.object({
  id: z.string(),
  runId: z.string(),
  start_s: z.number(),
  end_s: z.number(),
  /** What a person reads in the file is earlier by this [s], where the file's clock started anew. */
  countedOn_s: z.number(),
  gear: z.number().nullable(),
  /** Null where the log has no engine speed. */
  rpmFrom: z.number().nullable(),
  rpmTo: z.number().nullable(),
  complete: z.boolean(),
  /** Counts in verdicts: complete, with power, and not dropped by hand. */
  counts: z.boolean(),
  droppedBecause: z.string().nullable(),
  /** Every time it was left out or taken back in, oldest first. */
  decisions: z.array(z.object({ action: z.enum(['drop', 'restore']), reason: z.string() })),
  /** Why its ends were moved by hand; null where they were not. */
  trimmedBecause: z.string().nullable(),
  flags: z.array(NoteSchema),
});
export type PullSummary = z.infer<typeof PullSummarySchema>;

export const ColumnSummarySchema = z.object({
  column: z.string(),
  quantity: z.enum(quantityIds).nullable(),
  unit: z.string(),
  confidence: z.number(),
  reason: NoteSchema.nullable(),
});
export type ColumnSummary = z.infer<typeof ColumnSummarySchema>;

/** A run with what was found in it; `problems` where the log could not be read. */
export const RunSummarySchema = z.object({
  record: RunRecordSchema,
  duration_s: z.number().nullable(),
  columns: z.array(ColumnSummarySchema),
  pulls: z.array(PullSummarySchema),
  /** What the powers of its pulls rest on, each once. */
  powerNotes: z.array(NoteSchema),
  warnings: z.array(NoteSchema),
  problems: z.array(ProblemSchema),
});
export type RunSummary = z.infer<typeof RunSummarySchema>;

/** What a screen knows of the open session. The host's is the truth; `revision` tells an old copy. */
export const SnapshotSchema = z.object({
  revision: z.int(),
  folder: z.string(),
  session: SessionSchema,
  runs: z.array(RunSummarySchema),
  undoTitle: z.string().nullable(),
  redoTitle: z.string().nullable(),
  /** Another program holds the lock, or the folder can't be written. */
  readOnly: ProblemSchema.nullable(),
  /** What opening found and set aside. */
  notices: z.array(NoteSchema),
});
export type Snapshot = z.infer<typeof SnapshotSchema>;
