import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { FilePicker } from '../components/FilePicker.tsx';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { useImportAll } from '../importing/use-imports.tsx';
import styles from './StepActions.module.css';
import type { Step } from './what-now.ts';

/** At most two buttons: the step itself, and the way back where there is one. */
export function StepActions({ step }: { step: Step }) {
  const { screens } = useWords();
  const show = useShow();
  const { snapshot, edit } = useSession();
  const importAll = useImportAll();
  const said = screens.now;
  const entry = 'entry' in step ? step.entry : (snapshot?.session.ledger[0] ?? null);
  const isWriting = step.kind === 'change' || step.kind === 'next' || step.kind === 'again';
  const isBack = step.kind === 'loss';
  const drop = () =>
    entry && void edit({ type: 'entry.set', entryId: entry.id, patch: { state: 'dropped' } });
  return (
    <div className={styles.actions}>
      {isWriting && (
        <Button look="main" isWide onPress={() => show({ dialog: { type: 'entry', entryId: null } })}>
          {said.addChange}
        </Button>
      )}
      {isBack && (
        <Button look="main" isWide onPress={drop}>
          {said.dropChange}
        </Button>
      )}
      {!isWriting && entry && (
        <FilePicker
          look={isBack ? 'second' : 'main'}
          isWide
          onFiles={(files) => void importAll(files.map((file) => ({ file, entryId: entry.id })))}
        >
          {said.chooseFiles}
        </FilePicker>
      )}
      {(step.kind === 'undecidable' || step.kind === 'not-comparable') && (
        <Button isWide onPress={drop}>
          {said.dropChange}
        </Button>
      )}
    </div>
  );
}
