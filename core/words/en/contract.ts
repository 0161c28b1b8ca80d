import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const contractProblems: ProblemWordsOf<'contract'> = {};

export const contractNotes: NoteWordsOf<'contract'> = {};
