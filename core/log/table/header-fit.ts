import { splitDecimals } from './split-decimals.ts';
import { tokenise } from './tokenise.ts';

/** Names and columns that do not come out even: nobody can tell which name belongs to which numbers. */
export type HeaderMisfit = {
  readonly names: number;
  readonly columns: number;
  readonly line: number;
  /** The comma parts the columns and is the decimal mark as well. */
  readonly isCommaTwice: boolean;
};

/** Lines of data looked at for where their cells stand. */
const linesLookedAt = 50;

/**
 * The names of a header whose cells stand apart by blanks though names hold blanks too: parted where two blanks
 * stand, else where the cells of the data below begin or end, else with each unit in brackets put to its name.
 *
 * @param text     the header's line
 * @param data     lines of data below it
 * @param columns  cells of each
 * @param isSparse a row of units, where a column may have none
 * @returns        one name per column, or null where no way of parting comes out even
 */
export function partByBlanks(
  text: string,
  data: readonly string[],
  columns: number,
  isSparse = false,
): string[] | null {
  const wide = text.trim().split(/\s{2,}|\t/);
  if (wide.length === columns) return wide;
  const rows = data
    .slice(0, linesLookedAt)
    .map((line) => [...line.matchAll(/\S+/g)].map((m) => [m.index, m.index + m[0].length] as const))
    .filter((cells) => cells.length === columns);
  const first = rows[0];
  if (first && rows.length > 1) {
    const isEven = (edge: 0 | 1) =>
      rows.every((row) => row.every((cell, c) => cell[edge] === first[c]?.[edge]));
    // Numbers are flush right as a rule; a table flush left begins each name where its numbers begin.
    const cuts = isEven(1)
      ? first.map((c) => c[1])
      : isEven(0)
        ? [...first.slice(1).map((c) => c[0]), text.length]
        : [];
    const names = cutAt(text, cuts, isSparse);
    if (names) return names;
  }
  const joined: string[] = [];
  for (const word of text.trim().split(/\s+/)) {
    if (/^[[({]/.test(word) && joined.length > 0) joined.push(`${joined.pop()} ${word}`);
    else joined.push(word);
  }
  return joined.length === columns ? joined : null;
}

/** Parts a text at positions, none of which may lie inside a word; null where one does or a name is empty. */
function cutAt(text: string, cuts: readonly number[], isSparse: boolean): string[] | null {
  const names: string[] = [];
  let from = 0;
  for (const [i, cut] of cuts.entries()) {
    const to = i === cuts.length - 1 ? text.length : cut;
    if (/\S/.test(text[to - 1] ?? ' ') && /\S/.test(text[to] ?? ' ')) return null;
    const name = text.slice(from, to).trim();
    if (name === '' && !isSparse) return null;
    names.push(name);
    from = to;
  }
  return names.length > 0 ? names : null;
}

/** The cells of a header that another mark parts than the data: names with commas over numbers with semicolons. */
export function partOtherwise(text: string, delimiter: string, columns: number): string[] | null {
  if (columns < 2) return null;
  for (const other of ['\t', ';', '|', ',']) {
    if (other === delimiter || !text.includes(other)) continue;
    const cells = tokenise(text, other, true)[0] ?? [];
    if (cells.length === columns) return cells.map((cell) => cell.trim());
  }
  return null;
}

/**
 * Whether the comma parts numbers and columns alike, `0,05,2310,5` under `Time,RPM`: more cells than names, and
 * no point in any of them, or the cells above the names' number are exactly those that read as decimals.
 */
export function isCommaTwice(
  names: number,
  rows: readonly (readonly string[])[],
  delimiter: string,
): boolean {
  if (delimiter !== ',' || names < 2) return false;
  const longer = rows.filter((row) => row.length > names);
  if (longer.length <= 0.8 * rows.length) return false;
  if (longer.every((row) => row.every((cell) => /^\s*[-+]?\d*\s*$/.test(cell)))) return true;
  // Points in some columns and commas in others.
  const width = longer[0]?.length ?? 0;
  return splitDecimals(longer.filter((row) => row.length === width)) === width - names;
}

/** Whether a column counts its rows: whole numbers, each one more than the last. */
export function countsRows(cells: readonly string[]): boolean {
  if (cells.length < 3 || !cells.every((cell) => /^\s*\d+\s*$/.test(cell))) return false;
  return cells.every((cell, i) => i === 0 || Number(cell) === Number(cells[i - 1]) + 1);
}
