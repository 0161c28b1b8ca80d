import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const handoverProblems: ProblemWordsOf<'handover'> = {};

export const handoverNotes: NoteWordsOf<'handover'> = {};
