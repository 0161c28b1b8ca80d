import type { Language } from '../../core/words/index.ts';

/** A moment in the reader's own time, to the second: saves follow each other that fast. */
export function whenWords(iso: string, language: Language): string {
  return new Intl.DateTimeFormat(language === 'de' ? 'de-DE' : 'en-GB', {
    dateStyle: 'medium',
    timeStyle: 'medium',
  }).format(Date.parse(iso));
}
