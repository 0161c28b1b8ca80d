import type { Note } from '../result/index.ts';
import { shortReasons as de } from './de/short-reasons.ts';
import { shortReasons as en, type ShortReasons } from './en/short-reasons.ts';
import { noteText } from './sentences.ts';
import type { Language, Show } from './show.ts';

const words: Record<Language, ShortReasons> = { en, de };

/** Why two entries can't be compared, in the few words that a line of the ledger has room for. */
export function shortReason(note: Note, show: Show): string {
  const short = words[show.language] as { readonly [code: string]: ((facts: unknown) => string) | undefined };
  return short[note.code]?.(note.facts) ?? noteText(note, show);
}
