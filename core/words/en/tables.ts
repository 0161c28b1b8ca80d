import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const tablesProblems: ProblemWordsOf<'tables'> = {};

export const tablesNotes: NoteWordsOf<'tables'> = {};
