import type { Snapshot, VerdictWire } from '../../core/contract/index.ts';
import type { Entry } from '../../core/session/index.ts';
import { entryTitle } from '../../core/words/index.ts';
import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { emptyDraft } from '../entry/change-draft.ts';
import { useLedger } from '../hooks/use-ledger.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './DriftReminder.module.css';
import { isDriftOpen } from './drift-open.ts';

export type DriftReminderProps = {
  readonly verdict: VerdictWire;
  readonly before: Entry;
  readonly after: Entry;
  readonly snapshot: Snapshot;
};

/** After a gain that a drifting day could have brought as well: drive the earlier setting again. */
export function DriftReminder({ verdict, before, after, snapshot }: DriftReminderProps) {
  const { screens, show } = useWords();
  const showView = useShow();
  const ledger = useLedger().value;
  const said = screens.bench.driftOpen;
  if (!ledger || !isDriftOpen(verdict.kind, ledger.drift, after, snapshot.session.ledger)) return null;
  const name = `${snapshot.session.ledger.indexOf(before)} ${entryTitle(before, show)}`;
  const again = { ...emptyDraft, kind: 'nothing' as const, against: before.id };
  return (
    <p className={styles.reminder}>
      {said.why}
      <Button
        look="plain"
        isDisabled={snapshot.readOnly !== null}
        onPress={() => showView({ dialog: { type: 'entry', entryId: null, draft: again } })}
      >
        {said.again(name)}
      </Button>
    </p>
  );
}
