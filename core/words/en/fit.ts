import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const fitProblems: ProblemWordsOf<'fit'> = {};

export const fitNotes: NoteWordsOf<'fit'> = {
  'fit/lock-volume': (f, show) =>
    `${show.number(f.volume * 1e6, 0)} mL of liquid in one cylinder stop its piston (hydraulic lock). At the planned flow a stuck valve brings that in ${show.quantity(f.seconds, 'time', 0)}.`,
};
