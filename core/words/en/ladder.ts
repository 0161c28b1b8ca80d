import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const ladderProblems: ProblemWordsOf<'ladder'> = {};

export const ladderNotes: NoteWordsOf<'ladder'> = {};
