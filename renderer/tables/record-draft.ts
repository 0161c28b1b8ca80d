import type { Entry, EntryKind, TableChange } from '../../core/session/index.ts';
import { largestOf } from '../../core/session/index.ts';
import type { TableKind } from '../../core/tables/index.ts';
import type { TypedValue } from '../../core/units/index.ts';
import { type ChangeDraft, emptyDraft } from '../entry/change-draft.ts';

export const entryKindOf: { readonly [K in TableKind]: EntryKind } = {
  spark: 'spark',
  boost: 'boost',
  lambda: 'mixture',
};

/** As the cells are written: a tenth of a digit is noise of the subtraction. */
const tidy = (value: number) => Number(value.toFixed(6));

/**
 * The cells as a change of the ledger: spark by the size of its largest step, the others from and to of the cell that
 * moved furthest.
 */
export function draftOfCells(change: TableChange, where: string): ChangeDraft {
  const most = largestOf(change);
  const typed = (value: number): TypedValue => ({ value: tidy(value), unit: change.unit });
  const isSpark = change.kind === 'spark';
  const isAbsolute = change.kind === 'boost' && change.isAbsolute;
  return {
    ...emptyDraft,
    kind: entryKindOf[change.kind],
    // Boost is declared above the air around; as manifold pressure only its size says the same.
    from: most && !isSpark && !isAbsolute ? typed(most.from) : null,
    to: most && !isAbsolute ? typed(isSpark ? most.to - most.from : most.to) : null,
    where,
    table: change,
  };
}

/** Entries that these cells may belong to: of their kind, and not yet driven. */
export function openEntries(ledger: readonly Entry[], change: TableChange): readonly Entry[] {
  return ledger.filter(
    (e) => e.kind === entryKindOf[change.kind] && e.runs.length === 0 && e.state === 'kept',
  );
}
