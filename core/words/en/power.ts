import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const powerProblems: ProblemWordsOf<'power'> = {};

export const powerNotes: NoteWordsOf<'power'> = {};
