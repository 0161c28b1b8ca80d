import { z } from 'zod';
import { ProblemSchema } from './wire.ts';

/**
 * How far a log in a watched folder has come: still written, whole, copied into the session, or whole and not
 * taken, with the problems that say why.
 */
export const watchedStates = ['growing', 'complete', 'taken', 'refused'] as const;

/** What a log shows before it is whole; it may yet change with every line that is written. */
export const SoFarSchema = z.object({
  duration_s: z.number(),
  /** Full pulls in it. */
  pulls: z.int(),
  /** Highest wheel power of the last of them [W]. */
  peakPower: z.number().nullable(),
});
export type SoFar = z.infer<typeof SoFarSchema>;

export const WatchedLogSchema = z.object({
  name: z.string(),
  path: z.string(),
  size_bytes: z.int(),
  state: z.enum(watchedStates),
  /** False for a log that stood there before, or was whole before, and has grown since. */
  isNew: z.boolean(),
  /** When it last changed its state, ISO 8601 in UTC. */
  changedAt: z.string(),
  /** The run that it became, also where the very same log was there already. */
  runId: z.string().nullable(),
  /** An earlier, shorter copy of the same log, which left the entry in favour of this one and stays a run. */
  replaces: z.string().nullable(),
  problems: z.array(ProblemSchema),
  /** Null until it could be read once. */
  soFar: SoFarSchema.nullable(),
});
export type WatchedLog = z.infer<typeof WatchedLogSchema>;

/** A folder that a logger writes into, as watched for the open session. */
export const FolderWatchSchema = z.object({
  folder: z.string(),
  /** The entry that new runs join; null leaves them without one. */
  entryId: z.string().nullable(),
  /** Whether that entry is always the newest that was kept. */
  follows: z.boolean(),
  /** False where logs are only told and not taken. */
  takes: z.boolean(),
  startedAt: z.string(),
  /** The last to change first, at most a hundred. What stood there at the start and did not change is left out. */
  logs: z.array(WatchedLogSchema),
  /** Set while the folder does not answer; watching goes on. */
  problem: ProblemSchema.nullable(),
});
export type FolderWatch = z.infer<typeof FolderWatchSchema>;
