import type { ComponentPropsWithRef } from 'react';
import type { LedgerLine } from '../../core/contract/index.ts';
import type { Entry } from '../../core/session/index.ts';
import { entryTitle, shortReason } from '../../core/words/index.ts';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import type { ForestScale } from './forest-scale.ts';
import styles from './LedgerRow.module.css';
import { RowMenu } from './RowMenu.tsx';
import { RowVerdict } from './RowVerdict.tsx';
import { Whisker } from './Whisker.tsx';

export type LedgerRowProps = {
  readonly entry: Entry;
  readonly index: number;
  /** Null while the ledger is worked out. */
  readonly line: LedgerLine | null;
  readonly scale: ForestScale | null;
  /** The whisker's room is kept free until there is one, so that no row moves away from under a pointer. */
  readonly hasStrip: boolean;
  readonly side: 'before' | 'after' | null;
  /** Shown by itself: then there is no before, and no after either. */
  readonly isAlone: boolean;
  readonly onSelect: (side: 'before' | 'after') => void;
  readonly rowProps: ComponentPropsWithRef<'li'>;
};

/** One line of the book: what changed, what it was worth, and where that stands among the others. */
export function LedgerRow({
  entry,
  index,
  line,
  scale,
  hasStrip,
  side,
  isAlone,
  onSelect,
  rowProps,
}: LedgerRowProps) {
  const { screens, show } = useWords();
  const verdict = line?.verdict ?? null;
  const reason = verdict?.kind === 'not-comparable' ? verdict.reasons[0] : undefined;
  return (
    <li
      {...rowProps}
      className={cx(styles.row, side && styles[side], entry.state === 'dropped' && styles.dropped)}
    >
      <button
        type="button"
        className={styles.select}
        aria-current={side === 'after' ? 'true' : undefined}
        data-entry={entry.id}
        onClick={(event) => onSelect(event.shiftKey || event.altKey ? 'before' : 'after')}
      >
        <span className={styles.number}>{index}</span>
        <span className={styles.text}>
          <span className={styles.title}>{entryTitle(entry, show)}</span>
          <RowVerdict entry={entry} line={line} />
          {side && !isAlone && <span className={styles.side}>{screens.ledger[side]}</span>}
          {reason && <span className={styles.reason}>{shortReason(reason, show)}</span>}
        </span>
      </button>
      {hasStrip && (
        <div className={cx(styles.strip, index > 0 && styles.room)}>
          {index > 0 && scale && <Whisker verdict={line?.verdict ?? null} scale={scale} />}
        </div>
      )}
      <div className={styles.menu}>
        <RowMenu entry={entry} index={index} onSelect={onSelect} />
      </div>
    </li>
  );
}
