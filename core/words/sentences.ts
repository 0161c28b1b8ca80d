import type { Note, Problem, Where } from '../result/index.ts';
import { dictionary as de } from './de/index.ts';
import type { Dictionary, ProblemSentence } from './dictionary.ts';
import { dictionary as en } from './en/index.ts';
import type { Language, Show } from './show.ts';

const dictionaries: Record<Language, Dictionary> = { en, de };

/** All words of a language. */
export function wordsOf(language: Language): Dictionary {
  return dictionaries[language];
}

type AnySentence<T> = (facts: unknown, show: Show) => T;

/** The sentence of a remark. */
export function noteText(note: Note, show: Show): string {
  const sentence = wordsOf(show.language).notes[note.code] as AnySentence<string>;
  return sentence(note.facts, show);
}

/** `run-3.csv, line 8, column Time` */
export function whereText(where: Where, show: Show): string {
  const word =
    show.language === 'de' ? { line: 'Zeile', column: 'Spalte' } : { line: 'line', column: 'column' };
  return [
    where.file,
    where.line === undefined ? undefined : `${word.line} ${where.line}`,
    where.column === undefined ? undefined : `${word.column} ${where.column}`,
    where.field,
  ]
    .filter((part) => part !== undefined)
    .join(', ');
}

/** Message with its place in front, and the remedy. */
export function problemText(problem: Problem, show: Show): ProblemSentence {
  const sentence = wordsOf(show.language).problems[problem.code] as AnySentence<ProblemSentence>;
  const said = sentence(problem.facts, show);
  const place = problem.where ? whereText(problem.where, show) : '';
  return place === '' ? said : { message: `${place}: ${said.message}`, remedy: said.remedy };
}
