import { fail, ok, okUnless, type Problem, type Result } from '../result/index.ts';
import { cellNumber, decimalsOf } from './cell-number.ts';
import type { TableAxis } from './problems.ts';
import { cutTable, joinTable, type TableText } from './table-text.ts';

/** A table of an engine control: numbers over two axes, in the units they were written in. */
export type EcuTable = {
  /** Left to right and top to bottom as written; each rises or falls all the way. */
  readonly across: readonly number[];
  readonly down: readonly number[];
  /** One row per value of `down`. */
  readonly values: readonly (readonly number[])[];
  /** Digits after the decimal mark that the control shows. */
  readonly decimals: number;
  readonly decimalMark: '.' | ',';
  /** As pasted, with the changed cells in place. */
  readonly text: TableText;
  /** Of the first value in `text`. */
  readonly origin: { readonly row: number; readonly column: number };
};

const isNumber = (raw: string | undefined) => raw !== undefined && Number.isFinite(cellNumber(raw));

/** Last cell with something in it, plus one: editors leave delimiters behind. */
function lengthOf(cells: readonly string[]): number {
  let length = cells.length;
  while (length > 0 && (cells[length - 1] ?? '').trim() === '') length--;
  return length;
}

/**
 * Reads a pasted or saved table: an axis across the top, one down the left, numbers between. Lines above with a title and
 * lines below are kept and left alone.
 *
 * @param text  CSV or TSV, semicolons and blanks too; decimal point or comma
 * @returns     writeTable of it is the same text, byte for byte
 *
 * Errors: all at once: tables/empty, tables/no-grid, tables/row-length, tables/cell-not-number,
 *         tables/axis-not-rising, with line and column.
 */
export function readTable(text: string): Result<EcuTable> {
  if (text.trim() === '') return fail({ code: 'tables/empty', facts: {} });
  const cut = cutTable(text);
  const head = cut.rows.findIndex(({ cells }, row) => {
    // Two numbers or more, and a line below that starts with one where this one has its corner.
    const from = isNumber(cells[0]) && !isNumber(cells[1]) ? 0 : 1;
    const below = cut.rows[row + 1]?.cells ?? [];
    return isNumber(cells[from]) && isNumber(cells[from + 1]) && isNumber(below[0]) && lengthOf(below) > 2;
  });
  const top = cut.rows[head];
  if (!top) return fail({ code: 'tables/no-grid', facts: { rows: cut.rows.length } });
  const length = lengthOf(top.cells);
  const across = top.cells.slice(1, length).map(cellNumber);
  const problems: Problem[] = [];
  const down: number[] = [];
  const values: number[][] = [];
  let decimals = 0;
  let commas = 0;
  for (let row = head + 1; row < cut.rows.length; row++) {
    const cells = cut.rows[row]?.cells ?? [];
    if (!isNumber(cells[0])) break;
    const found = lengthOf(cells);
    if (found !== length) {
      problems.push({
        code: 'tables/row-length',
        facts: { cells: found, expected: length },
        where: { line: row + 1 },
      });
      continue;
    }
    down.push(cellNumber(cells[0] ?? ''));
    values.push(
      cells.slice(1, length).map((raw, i) => {
        const value = cellNumber(raw);
        if (Number.isNaN(value))
          problems.push({
            code: 'tables/cell-not-number',
            facts: { text: raw.trim() },
            where: { line: row + 1, column: `${i + 2}` },
          });
        decimals = Math.max(decimals, decimalsOf(raw));
        if (raw.includes(',')) commas++;
        return value;
      }),
    );
  }
  for (const [i, value] of across.entries())
    if (Number.isNaN(value))
      problems.push({
        code: 'tables/cell-not-number',
        facts: { text: (top.cells[i + 1] ?? '').trim() },
        where: { line: head + 1, column: `${i + 2}` },
      });
  problems.push(...axisProblems(across, 'across'), ...axisProblems(down, 'down'));
  return okUnless(problems, {
    across,
    down,
    values,
    decimals,
    decimalMark: commas > 0 && cut.delimiter !== ',' ? ',' : '.',
    text: cut,
    origin: { row: head + 1, column: 1 },
  });
}

/** An axis climbs or falls; the first two say which. */
function axisProblems(axis: readonly number[], name: TableAxis): Problem[] {
  const sign = Math.sign((axis[1] ?? 0) - (axis[0] ?? 0)) || 1;
  for (let i = 1; i < axis.length; i++) {
    const [previous = 0, value = 0] = [axis[i - 1], axis[i]];
    if (!((value - previous) * sign > 0) && Number.isFinite(value - previous))
      return [{ code: 'tables/axis-not-rising', facts: { axis: name, value, previous } }];
  }
  return [];
}

/** The table as text, in the shape it was read in: untouched cells byte for byte. */
export function writeTable(table: EcuTable): string {
  return joinTable(table.text);
}

/** Two tables of one shape over one pair of axes, or why not. */
export function sameAxes(a: EcuTable, b: EcuTable): Result<null> {
  if (a.across.length !== b.across.length || a.down.length !== b.down.length)
    return fail({
      code: 'tables/shape-differs',
      facts: {
        rows: a.down.length,
        columns: a.across.length,
        otherRows: b.down.length,
        otherColumns: b.across.length,
      },
    });
  for (const axis of ['across', 'down'] as const)
    for (const [i, value] of a[axis].entries()) {
      const other = b[axis][i] ?? Number.NaN;
      if (other !== value) return fail({ code: 'tables/axes-differ', facts: { axis, value, other } });
    }
  return ok(null);
}
