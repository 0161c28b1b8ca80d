/**
 * Tables of an engine control (spark, boost target, mixture target) over engine speed and load, any size.
 *
 *   readTable(text), writeTable(table)   untouched cells byte for byte
 *   coveredCells(...)                    the cells that the spray really covers
 *   stepCells(table, question)           one step with a smooth edge inside every limit
 *   differenceView(before, after)        what changed
 *
 * Every function answers with a new table: the old one is the way back.
 */
import './notes.ts';
import './problems.ts';

export * from './by-hand.ts';
export * from './coverage.ts';
export * from './difference-view.ts';
export { type EcuTable, readTable, sameAxes, writeTable } from './ecu-table.ts';
export * from './kind.ts';
export * from './plausible.ts';
export type { TableAxis } from './problems.ts';
export { type CellChange, changesBetween, withValues } from './set-cells.ts';
export * from './spray-of-plan.ts';
export * from './step-cells.ts';
