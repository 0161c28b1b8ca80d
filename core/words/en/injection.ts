import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const injectionProblems: ProblemWordsOf<'injection'> = {};

export const injectionNotes: NoteWordsOf<'injection'> = {};
