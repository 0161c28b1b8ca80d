import type { Language } from './show.ts';

/** The decimal sign that a language writes. */
const decimalOf: Record<Language, '.' | ','> = { en: '.', de: ',' };

/**
 * A number as a person types it, null where it is none. Both decimal signs are understood. One sign before
 * exactly three digits could group thousands or start decimals (`1,200`); then the reader's language decides.
 *
 * Check: `1.234,5`, `1,234.5` and `1 234.5` are 1234.5 in both languages; `0,85` and `0.85` are 0.85.
 */
export function readNumber(text: string, language: Language): number | null {
  const plain = text
    .trim()
    .replace(/[\s\u00a0\u202f'’]/g, '')
    .replace(/^[−–]/, '-');
  if (!/^[+-]?[\d.,]+$/.test(plain) || !/\d/.test(plain)) return null;
  const decimal = decimalIn(plain, language);
  const whole = decimal === null ? plain : plain.slice(0, plain.lastIndexOf(decimal));
  const part = decimal === null ? '' : plain.slice(plain.lastIndexOf(decimal) + 1);
  if (decimal !== null && whole.includes(decimal)) return null;
  const groups = whole.replace(/^[+-]/, '').split(/[.,]/);
  if (groups.length > 1 && groups.slice(1).some((g) => g.length !== 3)) return null;
  const value = Number(`${whole.replace(/[.,]/g, '')}.${part === '' ? '0' : part}`);
  return Number.isFinite(value) ? value : null;
}

/** Which sign starts the decimals; null where none does. */
function decimalIn(text: string, language: Language): '.' | ',' | null {
  const dots = text.split('.').length - 1;
  const commas = text.split(',').length - 1;
  if (dots > 0 && commas > 0) return text.lastIndexOf('.') > text.lastIndexOf(',') ? '.' : ',';
  if (dots + commas === 0) return null;
  const sign = dots > 0 ? '.' : ',';
  if (dots + commas > 1) return null;
  const digits = text.replace(/^[+-]/, '');
  const after = digits.length - digits.indexOf(sign) - 1;
  const before = digits.indexOf(sign);
  const couldGroup = after === 3 && before >= 1 && before <= 3 && !digits.startsWith('0');
  return couldGroup && sign !== decimalOf[language] ? null : sign;
}

/** Digits behind the decimal sign that a number was typed with, three at most. */
export function typedDecimals(value: number): number {
  return Math.min(3, String(value).split('.')[1]?.length ?? 0);
}
