import { createContext, type ReactNode, useContext, useDeferredValue, useEffect, useMemo } from 'react';
import type { QuantityId } from '../../core/log/index.ts';
import type { Note, Problem } from '../../core/result/index.ts';
import {
  createShow,
  noteText,
  type ProblemSentence,
  problemText,
  type ScreenWords,
  type Show,
  screenWords,
  wordsOf,
} from '../../core/words/index.ts';
import { usePreferences } from './use-preferences.tsx';

export type Words = {
  readonly show: Show;
  readonly screens: ScreenWords;
  readonly note: (note: Note) => string;
  readonly problem: (problem: Problem) => ProblemSentence;
  readonly quantity: (id: QuantityId) => string;
};

const WordsContext = createContext<Words | null>(null);

/** Words and numbers in the language and the units that the reader chose. */
export function WordsProvider({ children }: { children: ReactNode }) {
  const { preferences } = usePreferences();
  // The choice itself shows at once; every word and number on the screen follows in slices behind the paint.
  const { language, units } = useDeferredValue(preferences);
  const words = useMemo((): Words => {
    const show = createShow(language, units);
    return {
      show,
      screens: screenWords(language),
      note: (note) => noteText(note, show),
      problem: (problem) => problemText(byLabel(problem, screenWords(language)), show),
      quantity: (id) => wordsOf(language).quantities[id],
    };
  }, [language, units]);
  // With the words and not before: the page would be laid out twice.
  useEffect(() => {
    document.documentElement.lang = language;
  }, [language]);
  return <WordsContext value={words}>{children}</WordsContext>;
}

export function useWords(): Words {
  const words = useContext(WordsContext);
  if (!words) throw new Error('useWords outside WordsProvider');
  return words;
}

/** A field is known to the reader by its label, not by its path; one without a label needs no name. */
function byLabel(problem: Problem, { sheet }: ScreenWords): Problem {
  const path = problem.where?.field;
  if (path === undefined) return problem;
  const { field: _, ...where } = problem.where ?? {};
  const fields: Record<string, { label: string } | undefined> = sheet.fields;
  const label = fields[path]?.label;
  return { ...problem, where: label ? { ...where, field: label } : where } as Problem;
}
