import { ok, type Result } from '../result/index.ts';
import { type EcuTable, sameAxes } from './ecu-table.ts';
import { type CellChange, changesBetween } from './set-cells.ts';

/** Two tables over each other: after minus before. */
export type DifferenceView = {
  readonly delta: readonly (readonly number[])[];
  readonly changes: readonly CellChange[];
  /** Largest rise and largest fall; 0 where there is none. */
  readonly highest: number;
  readonly lowest: number;
};

/**
 * What changed from one table to another, cell by cell.
 *
 * Errors: tables/shape-differs, tables/axes-differ.
 */
export function differenceView(before: EcuTable, after: EcuTable): Result<DifferenceView> {
  const same = sameAxes(before, after);
  if (!same.ok) return same;
  // At the digits of the control: 12.3 - 12.1 is 0.2, not 0.20000000000000107.
  const digits = Math.max(before.decimals, after.decimals);
  const delta = before.values.map((line, r) =>
    line.map((value, c) => Number(((after.values[r]?.[c] ?? Number.NaN) - value).toFixed(digits)) + 0),
  );
  const all = delta.flat();
  return ok({
    delta,
    changes: changesBetween(before, after),
    highest: all.reduce((a, b) => Math.max(a, b), 0),
    lowest: all.reduce((a, b) => Math.min(a, b), 0),
  });
}
