import type { BlankField } from './blank-fields.ts';
import { type Cell, type Decimal, readCell } from './cell.ts';
import { type Dialect, filledCells, findDialect, type Row } from './dialect.ts';
import { countsRows, type HeaderMisfit, isCommaTwice, partByBlanks, partOtherwise } from './header-fit.ts';
import { bestNames, isUnitsRow, uniqueNames } from './header-names.ts';

/** Where the table stands in a file and how its cells are written. */
export type Layout = {
  readonly delimiter: string;
  /** Where blanks line up the columns; null where another mark parts them, or nothing lines them up. */
  readonly fields: readonly BlankField[] | null;
  readonly decimal: Decimal;
  /** Cells of most rows; the header may hold more. */
  readonly columns: number;
  /** Columns up to the last that has a name or holds anything. */
  readonly filledColumns: number;
  /** One name per column, as in the file, made unique; never empty. */
  readonly names: readonly string[];
  /** Whether the file leaves a column without a name. */
  readonly isNameless: readonly boolean[];
  /** Unit text per column from a units row, '' where there is none. */
  readonly unitRow: readonly string[];
  /** Rows of cells that stand above the data and come back inside it where headers repeat. */
  readonly headerRows: readonly (readonly string[])[];
  /** Lines counted from 1. */
  readonly headerLine: number;
  readonly firstDataLine: number;
  /** The text above the header, for a stated sample rate. */
  readonly preamble: string;
  /** Kind of cell per column, from the rows looked at. */
  readonly cellKinds: readonly Cell['kind'][];
  /** Where names and columns do not come out even; null where they do. */
  readonly misfit: HeaderMisfit | null;
  /** How many columns at the end have no name in a header that has some. */
  readonly unnamed: number;
};

/**
 * Finds delimiter, decimal mark, header, units row and first row of data.
 *
 * @param head  text of the first lines, each complete
 * @returns     the layout, or null where no row of numbers is found
 */
export function findLayout(head: string): Layout | null {
  const found = findDialect(head);
  return found && layoutOf(found.dialect, found.text);
}

function layoutOf(found: Dialect, text: string): Layout | null {
  const { rows, columns } = found;
  const first = rows.findIndex((_, i) => beginsData(rows, i, columns));
  const firstRow = rows[first];
  if (!firstRow) return null;
  let top = first;
  while (isOtherWidth(rows[top - 1], columns)) top--;
  const header: Row[] = [];
  for (let i = top - 1; i >= 0 && header.length < 6; i--) {
    const row = rows[i];
    if (!row) break;
    const filled = row.cells.filter((c) => c.trim() !== '').length;
    if (filled === 0 || row.cells.every((c) => /^[-=_*#.\s]*$/.test(c))) {
      if (filled > 0) continue;
      if (header.length > 0) break;
      continue;
    }
    // A group's name may stand over its first column alone.
    const isGroup = header.length > 0 && filled >= 2 && row.cells.length === columns;
    const isFull = filled >= Math.max(Math.min(2, columns), 0.5 * columns);
    if ((!isFull && !isGroup) || row.numbers > 0.3 * filled) break;
    header.unshift(row);
    if (!isFull) break;
  }
  const lines = text.split(/\r\n?|\n/);
  const data = rows.slice(first, first + rowsBelow).filter((row) => isDataRow(row, columns));
  if (header.length === 0 && found.delimiter !== ' ') {
    const above = rows.slice(0, top).findLast((row) => filledCells(row) > 0);
    const cells = above && partOtherwise(lines[above.line - 1] ?? '', found.delimiter, columns);
    if (above && cells) header.push({ cells, line: above.line, numbers: 0 });
  }
  if (found.delimiter === ' ') {
    const below = data.map((row) => lines[row.line - 1] ?? '');
    header.forEach((row, i) => {
      if (row.cells.length === columns) return;
      const isUnits = header.length > 1 && isUnitsRow(row.cells);
      const cells = partByBlanks(lines[row.line - 1] ?? '', below, columns, isUnits);
      // Units that may belong to their neighbours are worse than none.
      if (cells) header[i] = { ...row, cells };
      else if (isUnits) header[i] = { ...row, cells: row.cells.map(() => '--') };
    });
  }
  const unitsAt = header.length > 1 ? header.findLastIndex((row) => isUnitsRow(row.cells)) : -1;
  const unitRow = unitsAt >= 0 ? (header[unitsAt]?.cells ?? []) : [];
  const told = bestNames(header.filter((_, i) => i !== unitsAt));
  const named = told.cells.findLastIndex((cell) => cell.trim() !== '') + 1;
  // A row number in front that nobody named would put every name over its neighbour's numbers.
  const isCounted =
    named === columns - 1 && told.cells.length < columns && countsRows(data.map((row) => row.cells[0] ?? ''));
  const names = isCounted ? { cells: ['', ...told.cells], line: told.line } : told;
  const twice = isCommaTwice(
    named,
    data.map((row) => row.cells),
    found.delimiter,
  );
  const isUneven = named > 0 && (twice || (found.delimiter === ' ' && told.cells.length !== columns));
  const width = Math.max(columns, names.cells.length);
  return {
    delimiter: found.delimiter,
    fields: found.fields?.length === columns ? found.fields : null,
    decimal: found.decimal,
    columns,
    filledColumns: Math.max(named + (isCounted ? 1 : 0), filledWidth(rows.slice(first), columns)),
    names: uniqueNames(names.cells, width),
    isNameless: Array.from({ length: width }, (_, i) => (names.cells[i] ?? '').trim() === ''),
    unitRow: Array.from({ length: width }, (_, i) => unitRow[i]?.trim() ?? ''),
    headerRows: header.map((row) => row.cells),
    headerLine: names.line,
    firstDataLine: rows[top]?.line ?? firstRow.line,
    preamble: rows
      .slice(0, Math.max(0, top - header.length))
      .map((row) => row.cells.join(' '))
      .join('\n'),
    misfit: isUneven ? { names: named, columns, line: told.line, isCommaTwice: twice } : null,
    unnamed: named === 0 || isCounted ? 0 : Math.max(0, filledWidth(data, columns) - told.cells.length),
    cellKinds: Array.from({ length: width }, (_, i) => kindOfColumn(rows.slice(first), i, found.decimal)),
  };
}

/** Rows of data that a header is held against. */
const rowsBelow = 100;
/** Rows looked at to be sure that a row begins the data and is no number in the preamble. */
const rowsAhead = 4;

function isDataRow(row: Row, columns: number): boolean {
  const isWide = row.cells.length >= columns && row.cells.slice(columns).every((c) => c.trim() === '');
  return isWide && row.numbers > 0 && row.numbers >= 0.4 * filledCells(row);
}

/**
 * A row of numbers with more or fewer cells than most, above the first whole one: data all the same, and no header. Some
 * loggers leave the cells at the end away until their sensors begin.
 */
function isOtherWidth(row: Row | undefined, columns: number): boolean {
  if (row === undefined || row.cells.length < 2 || row.cells.length === columns) return false;
  return row.numbers > 0.7 * filledCells(row);
}

/**
 * Whether the data begin here: numbers, and more of them below. `Mass;1400` in a preamble may look like a row of
 * a narrow table, but the header still comes after it.
 */
function beginsData(rows: readonly Row[], at: number, columns: number): boolean {
  const row = rows[at];
  if (!row || !isDataRow(row, columns)) return false;
  let data = 0;
  let seen = 0;
  for (let i = at + 1; i < rows.length && seen < rowsAhead; i++) {
    const next = rows[i];
    if (!next) break;
    const filled = filledCells(next);
    if (filled === 0) continue;
    seen++;
    if (isDataRow(next, columns)) data++;
    else if (next.numbers === 0 && filled >= Math.max(2, 0.5 * columns)) return false;
  }
  return data >= seen - 1;
}

function kindOfColumn(rows: readonly Row[], column: number, decimal: Decimal): Cell['kind'] {
  const counts = new Map<Cell['kind'], number>();
  for (const row of rows.slice(0, 200)) {
    const kind = readCell(row.cells[column] ?? '', decimal).kind;
    if (kind !== 'missing') counts.set(kind, (counts.get(kind) ?? 0) + 1);
  }
  let best: Cell['kind'] = 'missing';
  for (const [kind, n] of counts) if (n > (counts.get(best) ?? 0)) best = kind;
  return best;
}

/** Cells up to the last that is filled in any row of numbers of this length. */
function filledWidth(rows: readonly Row[], length: number): number {
  return rows.reduce((most, row) => {
    if (row.numbers === 0 || row.cells.length !== length) return most;
    return Math.max(most, row.cells.findLastIndex((c) => c.trim() !== '') + 1);
  }, 0);
}
