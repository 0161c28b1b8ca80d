import { z } from 'zod';
import type { RepeatabilityPrior } from '../compare/index.ts';
import { IdSchema } from './run-record.ts';

/**
 * How well pulls repeated in an earlier session of the car. A copy of the numbers, not a path: the verdicts of this
 * session stay what they are when the other folder moves or changes.
 */
export const LeaningSchema = z.looseObject({
  sessionId: IdSchema,
  /** Of that session, to be named where it is leaned on. */
  name: z.string().min(1).max(200),
  /** Deviation of one pull, share of power. */
  deviation_percent: z.number().positive().max(50),
  degrees: z.number().positive().max(100_000),
});
export type Leaning = z.infer<typeof LeaningSchema>;

/** As the judge takes it; null where the session leans on none. */
export function priorOf(session: { readonly leansOn: Leaning | null }): RepeatabilityPrior | null {
  const { leansOn } = session;
  return leansOn && { deviationShare: leansOn.deviation_percent / 100, degrees: leansOn.degrees };
}
