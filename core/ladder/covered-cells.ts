import type { Plan } from '../injection/index.ts';
import { coveredCells, type EcuTable, sprayOfPlan, statesOfPlan, type TableAxes } from '../tables/index.ts';

/** The engine control's own spark table, as the ladder takes it. */
export type SparkTable = { readonly name: string; readonly table: EcuTable; readonly axes: TableAxes };

export type CoveredCells = {
  readonly table: string;
  readonly axes: TableAxes;
  /** Axis values and content as written. */
  readonly cells: readonly { readonly across: number; readonly down: number; readonly value: number }[];
};

/** The cells of a spark table that the planned pull goes through with enough fluid: those a spark step may touch. */
export function coveredOf(spark: SparkTable, plan: Plan, ambientPressure: number): CoveredCells {
  const { table, axes, name } = spark;
  const { covered } = coveredCells(table, axes, ambientPressure, sprayOfPlan(plan), statesOfPlan(plan));
  return {
    table: name,
    axes,
    cells: table.values.flatMap((line, r) =>
      line.flatMap((value, c) =>
        covered[r]?.[c] ? [{ across: table.across[c] ?? 0, down: table.down[r] ?? 0, value }] : [],
      ),
    ),
  };
}
