import { units } from '../../units/index.ts';
import { quantityIds } from '../quantity.ts';
import { functions } from './expression.ts';

const longest = 40;
/** Letters that spell as two in the language they come from. */
const spelt: Readonly<Record<string, string>> = {
  ä: 'ae',
  ö: 'oe',
  ü: 'ue',
  Ä: 'Ae',
  Ö: 'Oe',
  Ü: 'Ue',
  ß: 'ss',
  æ: 'ae',
  ø: 'o',
  ł: 'l',
};
/** Words that formulas read as something else. */
const reserved = [
  'pi',
  'e',
  'i',
  'time',
  'not',
  'and',
  'or',
  'xor',
  'mod',
  'to',
  'in',
  'true',
  'false',
  'null',
];
const taken: ReadonlySet<string> = new Set([
  ...reserved,
  ...Object.keys(functions),
  ...quantityIds,
  ...units.keys(),
]);

/**
 * A short name for each column by which a formula can use it, `Oel_Druck_2` for "Öl-Druck 2", each once and none that
 * formulas read as something else. A name without a letter of the Latin alphabet becomes `column_3`, by its place.
 */
export function columnSymbols(columns: readonly string[]): ReadonlyMap<string, string> {
  const symbols = new Map<string, string>();
  const used = new Set<string>();
  for (const [i, column] of columns.entries()) {
    if (symbols.has(column)) continue;
    const plain = column
      .replace(/[äöüÄÖÜßæøł]/g, (letter) => spelt[letter] ?? letter)
      .normalize('NFD')
      .replace(/\p{M}/gu, '')
      .replace(/[^A-Za-z0-9]+/g, '_')
      .replace(/^_+|_+$/g, '')
      .slice(0, longest - 10);
    const base = /^[A-Za-z]/.test(plain) && !taken.has(plain) ? plain : `column_${plain || i + 1}`;
    let symbol = base;
    for (let n = 2; used.has(symbol); n++) symbol = `${base}_${n}`;
    used.add(symbol);
    symbols.set(column, symbol);
  }
  return symbols;
}

/** Every name that a formula may mean, whether it can be read as a formula or not yet. */
export function symbolsIn(formula: string): ReadonlySet<string> {
  return new Set(formula.match(/[A-Za-z_][A-Za-z0-9_]*/g) ?? []);
}
