import type { ColumnMapping } from './column-mapping.ts';
import { headerParts } from './header-unit.ts';
import { matchName } from './name-match.ts';

/** How a column of latitude or longitude is written. */
export type PositionColumn = {
  /** The letter O of its cells is the west of Spanish and Italian. */
  readonly isRomance: boolean;
};

/** Whether a header, or a correction by hand, makes a column one of positions; null where neither does. */
export function positionColumn(name: string, mapping: readonly ColumnMapping[]): PositionColumn | null {
  const hand = mapping.find((m) => m.column === name);
  const quantity = hand ? hand.quantity : matchName(headerParts(name).name)[0]?.quantity;
  if (quantity !== 'latitude' && quantity !== 'longitude') return null;
  return { isRomance: /longitud(?!e\b)|ouest|oeste|ovest/i.test(name) };
}
