import { readCell } from './cell.ts';

/** Where the cells of a column stand in lines that are lined up by blanks: characters [from, to). */
export type BlankField = {
  readonly from: number;
  readonly to: number;
  readonly isFlushLeft: boolean;
  readonly isFlushRight: boolean;
};

/** Lines looked at for where their cells stand, and the fewest that show it. */
const linesLookedAt = 300;
const fewestLines = 3;

type Place = { readonly text: string; readonly from: number; readonly to: number };

function placesIn(line: string): Place[] {
  return [...line.matchAll(/\S+/g)].map((m) => ({
    text: m[0],
    from: m.index,
    to: m.index + m[0].length,
  }));
}

/** The decimal mark is not known yet. */
function isNoWord({ text }: Place): boolean {
  return readCell(text, '.').kind !== 'text' || readCell(text, ',').kind !== 'text';
}

/**
 * The columns of a table whose cells are lined up by blanks, so that an empty cell can be told by its place. Only
 * lines without words count.
 *
 * @param lines  of a text without tabs and quotes
 * @returns      null where the cells of some column are flush neither left nor right
 */
export function blankFields(lines: readonly string[]): readonly BlankField[] | null {
  const rows: Place[][] = [];
  for (const line of lines) {
    if (rows.length === linesLookedAt) break;
    const places = placesIn(line);
    if (places.length > 1 && places.every(isNoWord)) rows.push(places);
  }
  const most = Math.max(0, ...rows.map((row) => row.length));
  const table = rows.filter((row) => row.length > most / 2);
  if (table.length < fewestLines) return null;
  const isTaken: boolean[] = [];
  for (const { from, to } of table.flat()) for (let i = from; i < to; i++) isTaken[i] = true;
  const fields: { -readonly [K in keyof BlankField]: BlankField[K] }[] = [];
  for (let i = 0; i < isTaken.length; i++) {
    if (!isTaken[i]) continue;
    const from = i;
    while (isTaken[i]) i++;
    fields.push({ from, to: i, isFlushLeft: true, isFlushRight: true });
  }
  for (const row of table) {
    let at = -1;
    for (const { from, to } of row) {
      const before = at++;
      while (at < fields.length - 1 && from >= (fields[at] as BlankField).to) at++;
      const field = fields[at];
      // Two cells in one column.
      if (!field || at === before || from < field.from) return null;
      field.isFlushLeft &&= from === field.from;
      field.isFlushRight &&= to === field.to;
    }
  }
  return fields.length > 1 && fields.every((f) => f.isFlushLeft || f.isFlushRight) ? fields : null;
}

/** The cells of a line by where they stand, '' where there is none; null where one stands in no column. */
export function cellsInFields(line: string, fields: readonly BlankField[]): string[] | null {
  const cells = fields.map(() => '');
  let at = 0;
  for (const { text, from, to } of placesIn(line)) {
    const stands = (field: BlankField) =>
      (field.isFlushLeft && from === field.from) || (field.isFlushRight && to === field.to);
    while (at < fields.length && !stands(fields[at] as BlankField)) at++;
    if (at === fields.length) return null;
    cells[at++] = text;
  }
  return cells;
}
