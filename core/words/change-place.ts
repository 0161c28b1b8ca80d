import { chosenUnit, toSi, unitOf, units } from '../units/index.ts';
import { readNumber, typedDecimals } from './read-number.ts';
import type { Language, Show } from './show.ts';

/** Which side of a value a change holds on, as the program writes it and as a tuner types it. */
const sides: Record<Language, Record<'above' | 'below' | 'from' | 'up to', string>> = {
  en: { above: 'above', below: 'below', from: 'from', 'up to': 'up to' },
  de: { above: 'über', below: 'unter', from: 'ab', 'up to': 'bis' },
};

/** A unit as the program shows it, back to the unit that it stands for; boost may say that it is gauge. */
function unitWritten(text: string): string | null {
  const name = text.replace(/\s(?:g|rel)$/, '');
  // As German writes it.
  if (name === '1/min') return 'rpm';
  if (units.has(name)) return name;
  return [...units.values()].find((u) => u.symbol === name)?.id ?? null;
}

/**
 * Where a change holds, in the reader's language and units where it is a plain limit such as `above 0.6 bar`; any
 * other wording is the tuner's own and stays as it was typed.
 */
export function changePlace(where: string, show: Show): string {
  const text = where.trim();
  for (const [language, words] of Object.entries(sides) as [Language, (typeof sides)[Language]][]) {
    for (const side of Object.keys(words) as (keyof typeof words)[]) {
      const word = words[side];
      if (!text.toLowerCase().startsWith(`${word} `)) continue;
      const found = /^([\d.,'\u2009\u202f]+)\s*(1\/min|\p{L}\S*(?:\s(?:g|rel))?)$/u.exec(
        text.slice(word.length + 1).trim(),
      );
      const value = readNumber(found?.[1] ?? '', language);
      const id = unitWritten(found?.[2] ?? '');
      if (value === null || id === null) continue;
      const unit = unitOf(id);
      const kind = unit.kind === 'pressure' ? 'boost' : unit.kind === 'engineSpeed' ? 'engineSpeed' : null;
      if (kind === null) continue;
      // In the unit it was typed in it keeps its digits.
      const isOwn = chosenUnit(show.units, kind).id === id;
      const said = show.quantity(toSi(value, id), kind, isOwn ? typedDecimals(value) : undefined);
      return `${sides[show.language][side]} ${said}`;
    }
  }
  // A number and its unit stay on one line.
  return text.replace(/(\d) (?=\p{L})/gu, '$1\u00a0');
}
