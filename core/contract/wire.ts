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
export type Samples = (number | null)[];

const isSamples = (value: unknown): boolean =>
  Array.isArray(value) && value.every((v) => v === null || (typeof v === 'number' && Number.isFinite(v)));

/**
 * Looked through in one go: hundreds of pulls are hundred thousands of samples, and a check that builds its path
 * for each of them would hold up the screen.
 */
export const SamplesSchema = z.custom<Samples>(isSamples, 'a list of numbers, with null in its gaps');

/** A typed array for the wire. */
export function toSamples(values: ArrayLike<number>): Samples {
  return Array.from(values, (v) => (Number.isFinite(v) ? v : null));
}

/** Samples back to numbers, NaN in the gaps. */
export function fromSamples(samples: Samples): Float64Array {
  return Float64Array.from(samples, (v) => v ?? Number.NaN);
}
