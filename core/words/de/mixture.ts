import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const mixtureProblems: ProblemWordsOf<'mixture'> = {};

export const mixtureNotes: NoteWordsOf<'mixture'> = {};
