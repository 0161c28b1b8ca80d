import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const deliveryProblems: ProblemWordsOf<'delivery'> = {};

export const deliveryNotes: NoteWordsOf<'delivery'> = {};
