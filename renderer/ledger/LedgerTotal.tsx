import { explainVerdict } from '../../core/compare/index.ts';
import type { Ledger } from '../../core/contract/index.ts';
import { halfAround } from '../../core/words/index.ts';
import { useWords } from '../hooks/use-words.tsx';
import { originOfCard } from '../where-from/origin.ts';
import { WhereFrom } from '../where-from/WhereFrom.tsx';
import styles from './LedgerTotal.module.css';

/** Baseline to the last kept entry, as one number. */
export function LedgerTotal({ total }: { total: Ledger['total'] }) {
  const { screens, show } = useWords();
  if (!total) return null;
  const half = halfAround(total.effect, total.interval95);
  return (
    <p className={styles.total}>
      <span>{screens.ledger.total}</span>
      <WhereFrom
        value={show.differenceWithHalf(total.effect, half, 'power')}
        what={screens.ledger.total}
        origin={originOfCard(explainVerdict.effect, show)}
      />
    </p>
  );
}
