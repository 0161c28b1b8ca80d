import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const compareProblems: ProblemWordsOf<'compare'> = {};

export const compareNotes: NoteWordsOf<'compare'> = {};
