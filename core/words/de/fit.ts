import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const fitProblems: ProblemWordsOf<'fit'> = {};

export const fitNotes: NoteWordsOf<'fit'> = {};
