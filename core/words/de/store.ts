import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const storeProblems: ProblemWordsOf<'store'> = {};

export const storeNotes: NoteWordsOf<'store'> = {};
