import type { LadderStep } from '../../core/ladder/index.ts';
import { entryTitle } from '../../core/words/index.ts';
import { type ChangeDraft, entryPartOf } from '../entry/change-draft.ts';
import { useWords } from '../hooks/use-words.tsx';
import { draftOfStep } from './draft-of-step.ts';

/** A step's draft and its name, the one that the ledger will give it. */
export function useStepTitle(): (step: LadderStep) => { title: string; draft: ChangeDraft } {
  const { screens, show } = useWords();
  return (step) => {
    const where = step.cells ? screens.ladder.above(show.quantity(step.cells.boost[0], 'boost')) : '';
    const draft = draftOfStep(step, show, where);
    return { title: entryTitle(entryPartOf(draft), show), draft };
  };
}
