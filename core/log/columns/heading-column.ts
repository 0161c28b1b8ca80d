import { conceptsOf } from './name-match.ts';
import type { ColumnMeaning, RawColumn } from './recognise.ts';

/** Numbers no larger than this count laps or flag a way [deg] (common practice). */
const largestFlag = 10;
const fromReceiver: ReadonlySet<string> = new Set(['latitude', 'longitude', 'gpsSpeed']);

/**
 * Whether a column called a heading, whose unit nothing states, can be one: from 0 to 360 degrees, or half a circle to
 * either side. A word that may mean another thing (`Track`, `Cap`) needs more: numbers that change, and a position or
 * speed by satellite in the same log, without which no logger knows a heading.
 *
 * @param meanings  of every column
 */
export function canBeHeading({ name, spread }: RawColumn, meanings: readonly ColumnMeaning[]): boolean {
  if (!(spread.low >= -180 && spread.high <= 360)) return false;
  const said = conceptsOf(name);
  if (said.has('heading') || !said.has('track')) return true;
  const isChanging = spread.min !== spread.max && Math.max(spread.max, -spread.min) > largestFlag;
  return isChanging && (said.has('gps') || meanings.some((m) => fromReceiver.has(m.quantity ?? '')));
}
