import type { Snapshot } from '../../core/contract/index.ts';
import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './LedgerNotes.module.css';

/** Logs of the ledger that nothing can be read from: each verdict stands on fewer pulls than were driven. */
export function UnusableLogs({ snapshot }: { snapshot: Snapshot }) {
  const { screens } = useWords();
  const show = useShow();
  const said = screens.columns;
  const names = new Map(
    snapshot.runs
      .filter((r) => r.duration_s === null && r.problems.length > 0)
      .map(({ record }) => [record.id, record.name]),
  );
  const found = snapshot.session.ledger.flatMap((entry, number) =>
    entry.runs.flatMap(({ runId }) => {
      const name = names.get(runId);
      return name === undefined ? [] : [{ name, number, entryId: entry.id }];
    }),
  );
  const [first, ...more] = found;
  if (!first) return null;
  return (
    <div className={cx(styles.logs, styles.unusable)}>
      <p>{more.length === 0 ? said.unusable(first.name, first.number) : said.unusableMany(found.length)}</p>
      <Button
        look="plain"
        onPress={() => show({ afterId: first.entryId, beforeId: null, screen: 'bench', tab: 'pulls' })}
      >
        {said.seeWhy}
      </Button>
    </div>
  );
}
