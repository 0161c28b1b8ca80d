import { dressed } from './cell-number.ts';
import type { EcuTable } from './ecu-table.ts';

/** One cell that changed, value in the table's own unit. */
export type CellChange = {
  readonly row: number;
  readonly column: number;
  readonly from: number;
  readonly to: number;
};

/**
 * The table with new values. A cell whose written number stays the same keeps its text byte for byte.
 *
 * @param values  of the table's shape
 */
export function withValues(table: EcuTable, values: readonly (readonly number[])[]): EcuTable {
  const written: number[][] = [];
  const rows = table.text.rows.map((row, r) => {
    const y = r - table.origin.row;
    const old = table.values[y];
    const wanted = values[y];
    if (y < 0 || !old || !wanted) return row;
    const line: number[] = [];
    const cells = row.cells.map((raw, c) => {
      const x = c - table.origin.column;
      const before = old[x];
      const after = wanted[x];
      if (x < 0 || before === undefined) return raw;
      line.push(before);
      if (after === undefined || !Number.isFinite(after) || after === before) return raw;
      const text = dressed(raw, after, table.decimals, table.decimalMark);
      line[x] = Number(after.toFixed(table.decimals));
      return text;
    });
    written.push(line);
    return { ...row, cells };
  });
  return { ...table, values: written, text: { ...table.text, rows } };
}

/** Cells that differ between two tables of one shape. */
export function changesBetween(before: EcuTable, after: EcuTable): readonly CellChange[] {
  const changes: CellChange[] = [];
  for (const [row, line] of before.values.entries())
    for (const [column, from] of line.entries()) {
      const to = after.values[row]?.[column] ?? from;
      if (to !== from) changes.push({ row, column, from, to });
    }
  return changes;
}
