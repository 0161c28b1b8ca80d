import { z } from 'zod';
import type { Note, Problem } from '../result/index.ts';

/** Where in the input something stands. */
const WhereSchema = z.looseObject({
  file: z.string().optional(),
  line: z.number().optional(),
  column: z.string().optional(),
  field: z.string().optional(),
});

/** A remark on its way to a screen: the code decides the sentence, the facts fill it. */
export const NoteSchema = z.object({
  code: z.string(),
  facts: z.record(z.string(), z.unknown()),
  where: WhereSchema.optional(),
}) as unknown as z.ZodType<Note>;

export const ProblemSchema = z.object({
  code: z.string(),
  facts: z.record(z.string(), z.unknown()),
  where: WhereSchema.optional(),
}) as unknown as z.ZodType<Problem>;

/** A list of samples; a gap is null, as JSON has no NaN. */
export const SamplesSchema = z.array(z.number().nullable());
export type Samples = z.infer<typeof SamplesSchema>;

/** A typed array for the wire. */
export function toSamples(values: ArrayLike<number>): Samples {
  return Array.from(values, (v) => (Number.isFinite(v) ? v : null));
}

/** Samples back to numbers, NaN in the gaps. */
export function fromSamples(samples: Samples): Float64Array {
  return Float64Array.from(samples, (v) => v ?? Number.NaN);
}
