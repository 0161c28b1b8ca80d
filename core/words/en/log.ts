import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const logProblems: ProblemWordsOf<'log'> = {
  'log/empty': () => ({
    message: 'The file holds nothing.',
    remedy: 'Record the run again, or pick the file that the logger wrote.',
  }),
};

export const logNotes: NoteWordsOf<'log'> = {
  'log/column-by-name': (f) => `The header says “${f.word}”.`,
};
