import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const chargeProblems: ProblemWordsOf<'charge'> = {};

export const chargeNotes: NoteWordsOf<'charge'> = {};
