import { z } from 'zod';

/**
 * One earlier version of session.json. `history`: saved by the program. `set-aside`: a file that no longer
 * fitted its seal, be it by damage or by an edit of a few signs by hand, and was moved out of the way.
 */
export const SessionVersionSchema = z.object({
  /** Its path inside the session folder; what the requests on it take. */
  file: z.string(),
  source: z.enum(['history', 'set-aside']),
  /** Counts saves; null for what was set aside. */
  revision: z.int().nullable(),
  /** When it was saved or set aside, ISO 8601 in UTC, to the second. */
  at: z.string(),
  /** The original that a migration kept. */
  isOriginal: z.boolean(),
  /** Whether it says the same as the session now. */
  isCurrent: z.boolean(),
  /** Null where it can be read and fits; else it can only be copied by hand. */
  unusable: z.enum(['damaged', 'newer', 'invalid']).nullable(),
  entries: z.int(),
  name: z.string(),
  /** Fields in which it differs from the next older usable one, as paths, at most 50. */
  changed: z.array(z.string()),
});
export type SessionVersion = z.infer<typeof SessionVersionSchema>;
