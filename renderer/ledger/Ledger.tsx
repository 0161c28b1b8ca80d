import { Plus } from 'lucide-react';
import { useMemo } from 'react';
import { useView } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { ProblemList } from '../components/ProblemList.tsx';
import { useLedger } from '../hooks/use-ledger.ts';
import { useSelection } from '../hooks/use-selection.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { forestScale } from './forest-scale.ts';
import styles from './Ledger.module.css';
import { LedgerNotes } from './LedgerNotes.tsx';
import { LedgerRow } from './LedgerRow.tsx';
import { LedgerTotal } from './LedgerTotal.tsx';

/** The session's story as a forest plot: every entry on one scale of effect. */
export function Ledger() {
  const { screens, show } = useWords();
  const { snapshot } = useSession();
  const { show: showView } = useView();
  const { before, after } = useSelection();
  const ledger = useLedger();
  const lines = ledger.value?.lines ?? null;
  const scale = useMemo(() => forestScale(lines ?? [], show), [lines, show]);
  const entries = snapshot?.session.ledger ?? [];
  const select = (id: string) => (side: 'before' | 'after') =>
    showView(side === 'after' ? { afterId: id, beforeId: null, screen: 'bench' } : { beforeId: id });
  const sideOf = (id: string) => (after?.id === id ? 'after' : before?.id === id ? 'before' : null);
  return (
    <nav className={styles.ledger} aria-label={screens.ledger.title} aria-busy={ledger.isBusy}>
      <header className={styles.head}>
        <h2>{screens.ledger.title}</h2>
        {scale && (
          <div className={styles.scale} aria-hidden>
            {scale.ticks.map((tick, i) => (
              <span key={tick.text} style={{ left: `${tick.share * 100}%` }}>
                {tick.text}
                {i === scale.ticks.length - 1 && `\u00a0${scale.unit}`}
              </span>
            ))}
          </div>
        )}
      </header>
      <div className={styles.scroll}>
        <ol aria-label={screens.ledger.listLabel}>
          {entries.map((entry, i) => (
            <LedgerRow
              key={entry.id}
              entry={entry}
              index={i}
              line={lines?.find((l) => l.entryId === entry.id) ?? null}
              scale={scale}
              side={sideOf(entry.id)}
              isAlone={before === null}
              onSelect={select(entry.id)}
            />
          ))}
        </ol>
        {ledger.problems && (
          <div className={styles.problems}>
            <ProblemList problems={ledger.problems} />
          </div>
        )}
        <LedgerTotal total={ledger.value?.total ?? null} />
        <LedgerNotes notes={ledger.value?.notes ?? []} />
        <div className={styles.add}>
          <Button look="plain" onPress={() => showView({ dialog: { type: 'entry', entryId: null } })}>
            <Plus aria-hidden />
            {screens.ledger.addEntry}
          </Button>
        </div>
      </div>
    </nav>
  );
}
