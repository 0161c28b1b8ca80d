/**
 * What stands behind a kind of number, before any number is put in, when a person asks "where from". Written in
 * English here; `core/words/explained.ts` has the other language.
 */
export type FormulaCard = {
  readonly formula: string;
  /** Symbol, its SI unit and the name it has in the code. */
  readonly inputs: readonly { readonly symbol: string; readonly unit: string; readonly name: string }[];
  readonly source: string;
  readonly validRange: string;
};

/** Shorthand: `input('m', 'kg', 'mass')`. */
export function input(symbol: string, unit: string, name: string) {
  return { symbol, unit, name };
}
