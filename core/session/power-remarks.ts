import type { Note } from '../result/index.ts';

/** What powers rest on and what is doubtful about them: of each remark the first, as pulls in a row bring the same. */
export function powerRemarks(notes: readonly Note[]): readonly Note[] {
  const first = new Map<string, Note>();
  for (const note of notes) {
    // Air may lie outside a standard in several ways at once.
    const key = note.code === 'power/correction-out-of-range' ? `${note.code}/${note.facts.what}` : note.code;
    if (!first.has(key)) first.set(key, note);
  }
  return [...first.values()];
}
