import { handoverPhrases as de } from './de/handover-phrases.ts';
import { handoverPhrases as en, type HandoverPhrases } from './en/handover-phrases.ts';
import type { Language } from './show.ts';

export type { HandoverPhrases };

const phrases: Record<Language, HandoverPhrases> = { en, de };

/** The wording of the customer summary in one language. */
export function handoverPhrases(language: Language): HandoverPhrases {
  return phrases[language];
}
