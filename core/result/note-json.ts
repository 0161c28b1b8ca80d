import { z } from 'zod';
import type { Note } from './result.ts';

/** A remark in what scripts read: code and facts (SI); whoever prints it makes the sentence. */
export const NoteJsonSchema = z.object({ code: z.string(), facts: z.record(z.string(), z.unknown()) });
export type NoteJson = z.infer<typeof NoteJsonSchema>;

/** Remarks for scripts, in their order. */
export function notesJson(notes: readonly Note[]): NoteJson[] {
  return notes.map(({ code, facts }) => ({ code, facts: { ...facts } }));
}
