import type { LadderStep } from '../../core/ladder/index.ts';
import { entryTitle } from '../../core/words/index.ts';
import { type ChangeDraft, entryPartOf } from '../entry/change-draft.ts';
import { useWords } from '../hooks/use-words.tsx';
import { draftOfStep } from './draft-of-step.ts';

/** A step's draft and its name, as a rule the one that the ledger will give it. */
export function useStepTitle(): (step: LadderStep) => { title: string; draft: ChangeDraft } {
  const { screens, show } = useWords();
  return (step) => {
    const where = step.cells ? screens.ladder.above(show.quantity(step.cells.boost[0], 'boost')) : '';
    const draft = draftOfStep(step, show, where);
    // What the ledger calls `driven again` once it is, is still to be driven here.
    const title = step.kind === 'nothing' ? screens.ladder.again : entryTitle(entryPartOf(draft), show);
    return { title, draft };
  };
}
