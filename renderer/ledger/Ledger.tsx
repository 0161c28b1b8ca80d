import { Plus } from 'lucide-react';
import { useMemo, useRef } from 'react';
import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { ListGap } from '../components/ListGap.tsx';
import { ProblemList } from '../components/ProblemList.tsx';
import { useEntries } from '../hooks/use-entries.tsx';
import { useLedger } from '../hooks/use-ledger.ts';
import { useLongList } from '../hooks/use-long-list.ts';
import { useSelection } from '../hooks/use-selection.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { forestScale } from './forest-scale.ts';
import styles from './Ledger.module.css';
import { LedgerNotes } from './LedgerNotes.tsx';
import { LedgerRow } from './LedgerRow.tsx';
import { LedgerTotal } from './LedgerTotal.tsx';
import { UnplacedLogs } from './UnplacedLogs.tsx';
import { UnusableLogs } from './UnusableLogs.tsx';
import { useChosenInSight } from './use-chosen-in-sight.ts';

/** The session's story as a forest plot: every entry on one scale of effect. */
export function Ledger() {
  const { screens, show } = useWords();
  const { snapshot } = useSession();
  const showView = useShow();
  const { before, after } = useSelection();
  const ledger = useLedger();
  const lines = ledger.value?.lines ?? null;
  const scale = useMemo(() => forestScale(lines ?? [], show), [lines, show]);
  const { ledger: entries } = useEntries();
  const isScaleToCome = lines === null && entries.some((e, i) => i > 0 && e.runs.length > 0);
  const hasStrip = scale !== null || isScaleToCome;
  // What is compared stays in the page, wherever the book is scrolled to.
  const pinned = entries.flatMap((e, i) => (e.id === before?.id || e.id === after?.id ? [i] : []));
  const long = useLongList<HTMLOListElement>({ count: entries.length, rowHeight_px: 72, pinned });
  const book = useRef<HTMLDivElement>(null);
  useChosenInSight(book, { before: before?.id ?? null, after: after?.id ?? null }, lines !== null);
  const select = (id: string) => (side: 'before' | 'after') =>
    showView(side === 'after' ? { afterId: id, beforeId: null, screen: 'bench' } : { beforeId: id });
  const sideOf = (id: string) => (after?.id === id ? 'after' : before?.id === id ? 'before' : null);
  return (
    <nav className={styles.ledger} aria-label={screens.ledger.title} aria-busy={ledger.isBusy}>
      <header className={styles.head}>
        <h2>{screens.ledger.title}</h2>
        {hasStrip && (
          <div className={styles.scale} aria-hidden>
            {scale?.ticks.map((tick, i) => (
              <span key={tick.text} style={{ left: `${tick.share * 100}%` }}>
                {tick.text}
                {i === scale.ticks.length - 1 && `\u00a0${scale.unit}`}
              </span>
            ))}
          </div>
        )}
      </header>
      <div className={styles.scroll} ref={book}>
        <ol aria-label={screens.ledger.listLabel} {...long.listProps}>
          {long.parts.map((part) => {
            const entry = entries[part.index];
            if (part.kind === 'gap') return <ListGap key={`gap-${part.index}`} height_px={part.height_px} />;
            if (!entry) return null;
            return (
              <LedgerRow
                key={entry.id}
                entry={entry}
                index={part.index}
                line={lines?.find((l) => l.entryId === entry.id) ?? null}
                scale={scale}
                hasStrip={hasStrip}
                side={sideOf(entry.id)}
                isAlone={before === null}
                onSelect={select(entry.id)}
                rowProps={{ ...long.rowProps(part.index), ...long.placeProps(part.index) }}
              />
            );
          })}
        </ol>
        {ledger.problems && (
          <div className={styles.problems}>
            <ProblemList problems={ledger.problems} />
          </div>
        )}
        <LedgerTotal total={ledger.value?.total ?? null} />
        {snapshot && <UnusableLogs snapshot={snapshot} />}
        {snapshot && <UnplacedLogs snapshot={snapshot} />}
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
