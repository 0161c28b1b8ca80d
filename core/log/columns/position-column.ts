import type { ColumnMapping } from './column-mapping.ts';
import { headerParts } from './header-unit.ts';
import { matchName } from './name-match.ts';

/** How a column of latitude or longitude, or of their letters, is written. */
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

/** Letters stand as far from their position as in `Lat, Lon, N/S, E/W` (common practice). */
export const furthestLetters = 2;

/** `N/S`, `EW`, `O/W`, or one of the letters, as a word of its own. */
const bothLetters = /(?:^|[^a-z])(?:n\W?s|s\W?n|e\W?[wo]|[wo]\W?e|o\W?w|[nsew])(?:[^a-z]|$)/i;
const halfWords = /hemi|halbkugel|quadrant|(?:^|[^a-z])(?:lat|lon|dir|ref|ind|richtung|breite|l[aä]e?nge)/i;

/**
 * Whether a column near one of positions may hold the letters of their half of the earth: its header says so, or it has
 * none. `Mode` with its N and S holds none.
 */
export function letterColumn(
  names: readonly string[],
  column: number,
  mapping: readonly ColumnMapping[],
): PositionColumn | null {
  const name = (names[column] ?? '').replaceAll('_', ' ');
  const isNamed = !/^(?:\s*|column \d+)$/i.test(name);
  if (isNamed && !bothLetters.test(name) && !halfWords.test(name)) return null;
  const near = names.slice(Math.max(0, column - furthestLetters), column + furthestLetters + 1);
  const positions = near.map((n) => positionColumn(n, mapping)).filter((p) => p !== null);
  if (positions.length === 0) return null;
  // Where E is east, O is west.
  return { isRomance: positions.some((p) => p.isRomance) || /e\W?o|o\W?e/i.test(name) };
}
