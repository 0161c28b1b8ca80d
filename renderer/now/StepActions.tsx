import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { FilePicker } from '../components/FilePicker.tsx';
import { DropButton } from '../entry/DropButton.tsx';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { useImportAll } from '../importing/use-imports.tsx';
import styles from './StepActions.module.css';
import type { Step } from './what-now.ts';

/** At most two buttons: the step itself, and the way back where there is one. */
export function StepActions({ step }: { step: Step }) {
  const { screens } = useWords();
  const show = useShow();
  const { snapshot } = useSession();
  const importAll = useImportAll();
  const said = screens.now;
  const entry = 'entry' in step ? step.entry : (snapshot?.session.ledger[0] ?? null);
  const isWriting = step.kind === 'change' || step.kind === 'next' || step.kind === 'again';
  const isBack = step.kind === 'loss';
  return (
    <div className={styles.actions}>
      {isWriting && (
        <Button look="main" isWide onPress={() => show({ dialog: { type: 'entry', entryId: null } })}>
          {said.addChange}
        </Button>
      )}
      {isBack && entry && <DropButton entry={entry} look="main" />}
      {!isWriting && entry && (
        <FilePicker
          look={isBack ? 'second' : 'main'}
          isWide
          onFiles={(files) => void importAll(files.map((file) => ({ file, entryId: entry.id })))}
        >
          {said.chooseFiles}
        </FilePicker>
      )}
      {(step.kind === 'undecidable' || step.kind === 'not-comparable') && entry && (
        <DropButton entry={entry} />
      )}
    </div>
  );
}
