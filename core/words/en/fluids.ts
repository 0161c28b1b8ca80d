import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const fluidsProblems: ProblemWordsOf<'fluids'> = {};

export const fluidsNotes: NoteWordsOf<'fluids'> = {};
