import { fail, ok, type Result } from '../result/index.ts';
import type { CellMask } from './coverage.ts';
import type { EcuTable } from './ecu-table.ts';
import { withValues } from './set-cells.ts';

/**
 * One value into all chosen cells, at the digits of the table. A limit holds for every cell that would rise; one that
 * stands past it may come down.
 *
 * @param limit  in the table's own unit; null where there is none
 *
 * Errors: tables/cell-not-number; tables/past-limit.
 */
export function setCells(
  table: EcuTable,
  chosen: CellMask,
  value: number,
  limit: { readonly value: number; readonly unit: string } | null,
): Result<EcuTable> {
  if (!Number.isFinite(value)) return fail({ code: 'tables/cell-not-number', facts: { text: '' } });
  // As it will be written: rounding must not pass the limit afterwards.
  const written = Number(value.toFixed(table.decimals));
  const rises = table.values.some((line, r) => line.some((old, c) => chosen[r]?.[c] && written > old));
  if (limit && rises && written > limit.value)
    return fail({
      code: 'tables/past-limit',
      facts: { value: written, limit: limit.value, unit: limit.unit },
    });
  return ok(
    withValues(
      table,
      table.values.map((line, r) => line.map((old, c) => (chosen[r]?.[c] ? value : old))),
    ),
  );
}

/** A mask of a table's shape. */
export function maskOf(table: EcuTable, isIn: (row: number, column: number) => boolean): CellMask {
  return table.down.map((_, row) => table.across.map((__, column) => isIn(row, column)));
}

export function cellsIn(mask: CellMask): number {
  return mask.reduce((sum, line) => sum + line.filter(Boolean).length, 0);
}
