import { headerParts } from '../columns/header-unit.ts';
import { matchName } from '../columns/name-match.ts';
import { parseUnit } from '../columns/unit-words.ts';
import { readCell } from './cell.ts';
import type { Layout } from './layout.ts';
import { tokenise } from './tokenise.ts';

/** Such a table has time, name, value, unit and a few columns of the logger's own at most, and so many channels. */
const mostColumns = 6;
const mostChannels = 100;
/** So many of the names have to be known, a speed among them: words of a mode or a remark are no channels. */
const fewestKnown = 3;

/** Places of the columns of a table that holds one value of one channel in each row. */
export type ValueTable = {
  readonly time: number;
  readonly name: number;
  readonly value: number;
  /** Null where no column holds units. */
  readonly unit: number | null;
  readonly channels: number;
};

/**
 * Whether each row is one value of one channel, its name in a column; null where each row is a sample of all.
 *
 * @param text  the first lines of the file
 */
export function valueTable(layout: Layout, text: string): ValueTable | null {
  const { columns, cellKinds, names } = layout;
  if (columns < 3 || columns > mostColumns) return null;
  if (!cellKinds.includes('text')) return null;
  // Channel may follow upon channel: all of the lines are looked at.
  const lines = text.split(/\r\n?|\n/).slice(layout.firstDataLine - 1, -1);
  const rows = lines
    .filter((line) => line.trim() !== '')
    .map((line) => tokenise(line, layout.delimiter)[0] ?? []);
  const places = Array.from({ length: columns }, (_, c) => c);
  const saidIn = (c: number) =>
    new Set(rows.map((row) => (row[c] ?? '').trim()).filter((cell) => cell !== ''));
  const name = places.find((c) => cellKinds[c] === 'text' && areChannels(saidIn(c)));
  const numbers = places.filter((c) => cellKinds[c] === 'number');
  const clock = places.find((c) => cellKinds[c] === 'clock' || cellKinds[c] === 'stamp');
  const named = numbers.find((c) => matchName(headerParts(names[c] ?? '').name)[0]?.quantity === 'time');
  const time = clock ?? named ?? numbers[0];
  const value = numbers.findLast((c) => c !== time);
  if (name === undefined || time === undefined || value === undefined) return null;
  const unit = places.find(
    (c) => c !== name && cellKinds[c] === 'text' && [...saidIn(c)].some((u) => parseUnit(u)),
  );
  const isValue = (row: readonly string[]) => readCell(row[value] ?? '', layout.decimal).kind !== 'text';
  return rows.every(isValue) ? { time, name, value, unit: unit ?? null, channels: saidIn(name).size } : null;
}

function areChannels(names: ReadonlySet<string>): boolean {
  if (names.size > mostChannels) return false;
  const known = new Set([...names].map((n) => matchName(headerParts(n).name)[0]?.quantity));
  known.delete(undefined);
  return known.size >= fewestKnown && (known.has('engineSpeed') || known.has('vehicleSpeed'));
}
