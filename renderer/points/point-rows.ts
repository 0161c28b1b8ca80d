import { convert, type ShownKind } from '../../core/units/index.ts';
import { type Language, readNumber } from '../../core/words/index.ts';

/** One column of a list of points; `unit` is the one that the session keeps it in. */
export type PointColumn = {
  readonly key: string;
  readonly label: string;
  readonly kind: ShownKind;
  readonly unit: string;
  /** Shown in this unit, whatever the reader chose for the kind. */
  readonly shownIn?: string;
  /** A point stands without it. */
  readonly isOptional?: boolean;
};

/** A point while it is typed: what is missing is null; keys of no column are carried along. */
export type PointRow = Readonly<Record<string, unknown>>;

/** The points that have everything they need. */
export function wholeRows(rows: readonly PointRow[], columns: readonly PointColumn[]): PointRow[] {
  return rows.filter((row) => columns.every((c) => c.isOptional || typeof row[c.key] === 'number'));
}

/** Whether two lists of points say the same. */
export function sameRows(
  a: readonly PointRow[],
  b: readonly PointRow[],
  columns: readonly PointColumn[],
): boolean {
  return a.length === b.length && a.every((row, i) => columns.every((c) => row[c.key] === b[i]?.[c.key]));
}

/** The rows with one cell changed. */
export function withCell(
  rows: readonly PointRow[],
  at: number,
  key: string,
  value: number | null,
): PointRow[] {
  return rows.map((row, i) => (i === at ? { ...row, [key]: value } : row));
}

/**
 * Cells copied from a spreadsheet, laid over the rows from one cell on: lines apart by line breaks, cells by tabs
 * or semicolons. Rows are added where there are too few; null where nothing in it is a number.
 *
 * @param shownIn  unit of each column as the reader sees it
 */
export function withPasted(
  rows: readonly PointRow[],
  text: string,
  from: { readonly row: number; readonly column: number },
  columns: readonly PointColumn[],
  shownIn: readonly string[],
  language: Language,
): PointRow[] | null {
  const lines = text
    .split(/\r?\n/)
    .map((line) => line.split(/[\t;]/).map((cell) => readNumber(cell.trim(), language)))
    // A header above the numbers is no point.
    .filter((cells) => cells.some((cell) => cell !== null));
  if (lines.length === 0) return null;
  const next = [...rows];
  for (const [i, cells] of lines.entries()) {
    let row: PointRow = next[from.row + i] ?? Object.fromEntries(columns.map((c) => [c.key, null]));
    for (const [k, cell] of cells.entries()) {
      const column = columns[from.column + k];
      const unit = shownIn[from.column + k];
      if (column && unit !== undefined && cell !== null)
        row = { ...row, [column.key]: Number(convert(cell, unit, column.unit).toPrecision(12)) };
    }
    next[from.row + i] = row;
  }
  return next;
}
