import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

export const fitProblems: ProblemWordsOf<'fit'> = {};

export const fitNotes: NoteWordsOf<'fit'> = {
  'fit/lock-volume': (f, show) =>
    `${show.number(f.volume * 1e6, 0)} mL Flüssigkeit in einem Zylinder halten seinen Kolben auf (Flüssigkeitsschlag). Beim geplanten Durchfluss bringt ein hängendes Ventil das in ${show.quantity(f.seconds, 'time', 0)}.`,
};
