import type { Snapshot } from '../../core/contract/index.ts';
import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { waitingRuns } from '../importing/log-places.ts';
import styles from './LedgerNotes.module.css';

/** Logs that wait for an entry: no other place of the screens shows them. */
export function UnplacedLogs({ snapshot }: { snapshot: Snapshot }) {
  const { screens } = useWords();
  const show = useShow();
  const said = screens.importing.move;
  const [first, ...more] = waitingRuns(snapshot);
  if (first === undefined) return null;
  const open = () => show({ dialog: { type: 'move-logs', runId: more.length === 0 ? first : null } });
  return (
    <div className={styles.logs}>
      <p>{said.unplaced(more.length + 1)}</p>
      <Button look="plain" onPress={open}>
        {said.place}
      </Button>
    </div>
  );
}
