import type { ColumnSummary, RunSummary } from '../../core/contract/index.ts';
import {
  type ColumnMapping,
  fileColumns,
  fingerprintOfColumns,
  measures,
  type QuantityId,
  quantities,
  siScale,
} from '../../core/log/index.ts';
import type { SessionEdit } from '../../core/session/index.ts';
import { offeredUnits, rowStepIds, units } from '../../core/units/index.ts';

/** Corrections by column; what was left alone is not in it. */
export type MappingDraft = Readonly<Record<string, ColumnMapping>>;

/** Columns of the file itself: what a formula made is not mapped. */
export function shownColumns(run: RunSummary): ColumnSummary[] {
  const names = new Set(fileColumns(run.columns));
  return run.columns.filter((c) => names.has(c.column));
}

/** What a column stands for with the draft laid over what the reader found. */
export function meaningOf(column: ColumnSummary, draft: MappingDraft): ColumnMapping {
  return draft[column.column] ?? { column: column.column, quantity: column.quantity, unit: column.unit };
}

/**
 * A column's values as they would be read with another meaning: SI where that has a quantity, else the file's numbers.
 *
 * @param values  as the program has them now
 */
export function withMeaning(
  column: ColumnSummary,
  meaning: ColumnMapping,
  values: readonly number[],
): readonly number[] {
  if (column.quantity === meaning.quantity && column.unit === meaning.unit) return values;
  const now = column.quantity && siScale(column.quantity, column.unit);
  const then = meaning.quantity && siScale(meaning.quantity, meaning.unit);
  return values.map((v) => {
    const inFile = now ? (v - now.offset) / now.factor : v;
    return then ? inFile * then.factor + then.offset : inFile;
  });
}

/**
 * Units that a file can have a quantity in: the usual ones first, then all others. The one in use stands first where it
 * is none of the usual.
 */
export function unitsFor(quantity: QuantityId | null, current: string): string[] {
  if (quantity === null) return [];
  const usual =
    quantity === 'injectorTime' ? ['ms', 'us'] : offeredUnits(quantities[quantity]).map((u) => u.id);
  const others = [...units.keys()].filter(
    (id) => !usual.includes(id) && isInFiles(id, quantity) && measures(id, quantity),
  );
  return others.includes(current)
    ? [current, ...usual, ...others.filter((id) => id !== current)]
    : [...usual, ...others];
}

/** A number takes any unit and needs none; rows are counted for the time alone. */
function isInFiles(id: string, quantity: QuantityId): boolean {
  return quantities[quantity] !== 'number' && (quantity === 'time' || !rowStepIds.includes(id));
}

/** A column given another meaning keeps its unit where that still measures it. */
export function withQuantity(old: ColumnMapping, quantity: QuantityId | null): ColumnMapping {
  if (quantity === null) return { ...old, quantity };
  const unit = units.has(old.unit) && measures(old.unit, quantity) ? old.unit : unitsFor(quantity, '')[0];
  return { ...old, quantity, unit: unit ?? '' };
}

/** Other runs whose logs have the very same columns. */
export function alikeRuns(runs: readonly RunSummary[], run: RunSummary): RunSummary[] {
  const print = (r: RunSummary) => fingerprintOfColumns(fileColumns(r.columns));
  const own = print(run);
  return runs.filter((r) => r !== run && r.columns.length > 0 && print(r) === own);
}

/** One undoable step that gives these runs the corrected columns; earlier corrections of others stand. */
export function mappingEdits(runs: readonly RunSummary[], draft: MappingDraft): SessionEdit[] {
  return runs.map(({ record }) => ({
    type: 'run.set',
    runId: record.id,
    patch: {
      columns: [...record.columns.filter((c) => !(c.column in draft)), ...Object.values(draft)],
    },
  }));
}
