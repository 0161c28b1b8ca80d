import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const logProblems: ProblemWordsOf<'log'> = {
  'log/empty': () => ({
    message: 'Die Datei ist leer.',
    remedy: 'Die Fahrt neu aufzeichnen oder die Datei wählen, die der Logger geschrieben hat.',
  }),
};

export const logNotes: NoteWordsOf<'log'> = {
  'log/column-by-name': (f) => `Im Spaltenkopf steht „${f.word}“.`,
};
