import type { GateAction } from '../../core/ladder/index.ts';
import type { Entry } from '../../core/session/index.ts';
import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { DropButton } from '../entry/DropButton.tsx';
import { useWords } from '../hooks/use-words.tsx';
import styles from './StepActions.module.css';

/** Actions that leave the change as it stands. */
const undoesNothing: readonly GateAction[] = ['hold-boost', 'cool-down', 'refill'];

/** A gate has closed: back to the entry before where the change brought it about, and the limits to look at. */
export function ClosedGateActions({ entry, action }: { entry: Entry; action: GateAction }) {
  const { screens } = useWords();
  const show = useShow();
  const said = screens.now;
  const goesBack = entry.kind !== 'baseline' && !undoesNothing.includes(action);
  return (
    <div className={styles.actions}>
      {goesBack && <DropButton entry={entry} look="main" />}
      <Button isWide onPress={() => show({ screen: 'setup', section: 'limits' })}>
        {said.openLimits}
      </Button>
    </div>
  );
}
