import {
  columnSymbols,
  type DerivedChannel,
  type Log,
  type QuantityId,
  symbolsIn,
} from '../../core/log/index.ts';
import type { Kind } from '../../core/units/index.ts';

/** A column that a formula can use by a short name of its own. */
export type NamedColumn = { readonly symbol: string; readonly column: string; readonly kind: Kind };

/**
 * The columns of a log that have no name in formulas by what they stand for: unknown ones, further ones of a quantity,
 * and the channels by formula above one.
 */
export function namedColumns(log: Pick<Log, 'channels'>, above: readonly DerivedChannel[]): NamedColumn[] {
  const surest = new Map<QuantityId, { column: string; confidence: number }>();
  for (const { column, quantity, confidence } of log.channels) {
    if (quantity !== null && confidence > (surest.get(quantity)?.confidence ?? -1))
      surest.set(quantity, { column, confidence });
  }
  const columns = log.channels
    .filter((c) => c.quantity === null || surest.get(c.quantity)?.column !== c.column)
    .map((c) => ({ column: c.column, kind: 'number' as Kind }));
  const made = above.filter((d) => d.name.trim() !== '').map((d) => ({ column: d.name, kind: d.kind }));
  const all = [...columns, ...made];
  const symbols = columnSymbols(all.map((c) => c.column));
  return all.map((c) => ({ ...c, symbol: symbols.get(c.column) ?? c.column }));
}

/** The inputs of a formula: those it had that it still names, and columns that it names by their short names. */
export function inputsOf(
  formula: string,
  kept: DerivedChannel['inputs'],
  named: readonly NamedColumn[],
): DerivedChannel['inputs'] {
  const symbols = symbolsIn(formula);
  const still = kept.filter((input) => symbols.has(input.symbol));
  const known = new Set(still.map((input) => input.symbol));
  return [...still, ...named.filter((n) => symbols.has(n.symbol) && !known.has(n.symbol))];
}

/** A channel that uses another by its name, after that other was given another name or kind. */
export function followed(
  derived: DerivedChannel,
  before: Pick<DerivedChannel, 'name'>,
  { name, kind }: Pick<DerivedChannel, 'name' | 'kind'>,
): DerivedChannel {
  const inputs = derived.inputs.map((i) => (i.column === before.name ? { ...i, column: name, kind } : i));
  return { ...derived, inputs };
}
