import type { NextStep } from '../../core/ladder/index.ts';
import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { FilePicker } from '../components/FilePicker.tsx';
import { DropButton } from '../entry/DropButton.tsx';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { useImportAll } from '../importing/use-imports.tsx';
import { repeatable } from '../ladder/AgainChoice.tsx';
import { useStepTitle } from '../ladder/use-step-title.ts';
import styles from './StepActions.module.css';

/** At most two buttons: what the ladder asks for, and the way back where there is one. */
export function LadderActions({ next }: { next: NextStep }) {
  const { screens } = useWords();
  const titleOf = useStepTitle();
  const showView = useShow();
  const { snapshot } = useSession();
  const importAll = useImportAll();
  const said = screens.now;
  const ledger = snapshot?.session.ledger ?? [];
  const last = ledger.findLast((e) => e.state === 'kept');
  const isDriving = ['drive-baseline', 'more-pulls', 'drive-again'].includes(next.kind);
  const target = next.kind === 'drive-baseline' ? ledger[0] : last;
  // The ladder is worked out behind the ledger: until then it speaks of the change that was dropped.
  const isOfLast = last !== undefined && next.ladder.standing.last?.id === last.id;
  const canDrop = isOfLast && last !== ledger[0] && (next.kind === 'go-back' || next.kind === 'drive-again');
  const { step } = next;
  return (
    <div className={styles.actions}>
      {isDriving && target && (
        <FilePicker
          look="main"
          isWide
          onFiles={(files) => void importAll(files.map((file) => ({ file, entryId: target.id })))}
        >
          {said.chooseFiles}
        </FilePicker>
      )}
      {next.kind === 'make-step' && step && (
        <Button
          look="main"
          isWide
          onPress={() => {
            const { draft } = titleOf(step);
            // The dialog asks which; the baseline shows the drift of the whole day.
            const against = step.kind === 'nothing' ? (repeatable(ledger)[0]?.id ?? null) : draft.against;
            showView({ dialog: { type: 'entry', entryId: null, draft: { ...draft, against } } });
          }}
        >
          {said.writeStep}
        </Button>
      )}
      {next.kind === 'review-fit' && (
        <Button look="main" isWide onPress={() => showView({ screen: 'setup', section: 'fit' })}>
          {said.openFit}
        </Button>
      )}
      {next.kind === 'mend-the-spray' && (
        <Button look="main" isWide onPress={() => showView({ screen: 'plan' })}>
          {said.openPlan}
        </Button>
      )}
      {next.kind === 'done' && (
        <Button look="main" isWide onPress={() => showView({ screen: 'handover' })}>
          {said.openHandover}
        </Button>
      )}
      {canDrop && <DropButton entry={last} look={next.kind === 'go-back' ? 'main' : 'second'} />}
    </div>
  );
}
