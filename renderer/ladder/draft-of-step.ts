import { type LadderStep, stepQuantity } from '../../core/ladder/index.ts';
import { chosenUnit, fromSi, type ShownKind, type TypedValue } from '../../core/units/index.ts';
import type { Show } from '../../core/words/index.ts';
import { type ChangeDraft, emptyDraft } from '../entry/change-draft.ts';

/** Four digits: finer than any of it can be set. */
function typed(value: number | null, kind: ShownKind | null, show: Show): TypedValue | null {
  if (value === null || kind === null) return null;
  const unit = chosenUnit(show.units, kind).id;
  return { value: Number(fromSi(value, unit).toPrecision(4)), unit };
}

/**
 * The step as the ledger would write it. Spark goes in as its size, as a tuner says it: what stands in the tables
 * nobody told us.
 *
 * @param where  of the cells, in the reader's words
 */
export function draftOfStep(step: LadderStep, show: Show, where: string): ChangeDraft {
  const kind = stepQuantity[step.kind];
  const size = step.kind === 'spark' && step.to !== null ? step.to - (step.from ?? 0) : step.to;
  return {
    ...emptyDraft,
    kind: step.kind,
    from: step.kind === 'spark' ? null : typed(step.from, kind, show),
    to: typed(size, kind, show),
    where: step.cells ? where : '',
  };
}
