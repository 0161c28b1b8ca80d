import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const sessionProblems: ProblemWordsOf<'session'> = {};

export const sessionNotes: NoteWordsOf<'session'> = {};
