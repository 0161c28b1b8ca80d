import { screens as de } from './de/screens/index.ts';
import { screens as en } from './en/screens/index.ts';
import type { Language } from './show.ts';

/** Everything that a screen says of its own; English is the model that every other language must fill. */
export type ScreenWords = typeof en;

const all: Record<Language, ScreenWords> = { en, de };

/** The words of the screens in one language. */
export function screenWords(language: Language): ScreenWords {
  return all[language];
}
