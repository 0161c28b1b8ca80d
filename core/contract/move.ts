import { z } from 'zod';
import { NoteSchema } from './wire.ts';

/** A session packed into one zip. */
export const PackedSchema = z.object({
  path: z.string(),
  files: z.int(),
  /** Of the files, before they were packed. */
  size_bytes: z.number(),
  /** SHA-256 of the zip, to be compared at the other end. */
  sha256: z.string(),
});
export type Packed = z.infer<typeof PackedSchema>;

/** A zip unpacked into a new session folder. */
export const UnpackedSchema = z.object({
  folder: z.string(),
  files: z.int(),
  /** Files held against the list of SHA-256 sums in the zip; 0 for a zip that another program made. */
  checked: z.int(),
  /** SHA-256 of the zip itself. */
  sha256: z.string(),
});
export type Unpacked = z.infer<typeof UnpackedSchema>;

export const mergeSides = ['mine', 'theirs'] as const;

/**
 * One thing that both copies had changed in different ways. Nothing of it is lost: both values stand in
 * `record`, and the one that does not stand in the session can be taken at any time.
 */
export const MergeConflictSchema = z.object({
  /** The record it is written down in, and its place there. */
  record: z.string(),
  index: z.int(),
  mergedAt: z.string(),
  /** `session.json`, or `runs/<id>/run.json`. */
  file: z.string(),
  path: z.string(),
  /** `order`: both added to one list; all of it is there, and only the order was chosen. */
  kind: z.enum(['value', 'removed', 'order']),
  /** JSON text of each side's value; null where that side had removed it. */
  mine: z.string().nullable(),
  theirs: z.string().nullable(),
  /** Whose value the session holds now; `other` where it was edited since, `gone` with the thing it stood in. */
  stands: z.enum([...mergeSides, 'other', 'gone']),
});
export type ShownConflict = z.infer<typeof MergeConflictSchema>;

export const MergeReportSchema = z.object({
  /** Runs that came from the other copy, with the names of their logs. */
  newRuns: z.array(z.object({ id: z.string(), name: z.string() })),
  conflicts: z.array(MergeConflictSchema),
  notices: z.array(NoteSchema),
});
export type ShownMerge = z.infer<typeof MergeReportSchema>;
