import type { LedgerLine } from '../../core/contract/index.ts';
import type { Entry } from '../../core/session/index.ts';
import { halfAround } from '../../core/words/index.ts';
import { cx } from '../design/cx.ts';
import tones from '../design/tones.module.css';
import { useWords } from '../hooks/use-words.tsx';
import styles from './RowVerdict.module.css';
import { toneOf } from './tone.ts';

/** The second line of an entry: the verdict in words with its number, or what is still missing. */
export function RowVerdict({ entry, line }: { entry: Entry; line: LedgerLine | null }) {
  const { screens, show } = useWords();
  const said = screens.ledger;
  if (entry.runs.length === 0) return <span className={styles.soft}>{said.waiting}</span>;
  if (!line) return <span className={styles.soft}>{screens.shell.loading}</span>;
  if (line.pulls === 0) return <span className={styles.soft}>{said.noPulls}</span>;
  const { verdict, level } = line;
  if (!verdict) {
    return (
      <>
        <span className={styles.word}>{said.pulls(line.pulls)}</span>
        {level && (
          <span className={styles.soft}>
            {level.half === null
              ? show.quantity(level.mean, 'power')
              : show.withHalf(level.mean, level.half, 'power')}
          </span>
        )}
      </>
    );
  }
  const half =
    verdict.interval95 && verdict.effect !== null ? halfAround(verdict.effect, verdict.interval95) : null;
  return (
    <>
      <span className={cx(styles.word, tones[toneOf(verdict.kind)])}>
        {said.verdicts[verdict.kind]}
        {verdict.kind === 'undecided' &&
          verdict.morePulls !== null &&
          `, ${said.morePulls(verdict.morePulls)}`}
      </span>
      {verdict.kind !== 'not-comparable' && verdict.effect !== null && (
        <span className={styles.soft}>
          {half === null
            ? show.difference(verdict.effect, 'power')
            : show.differenceWithHalf(verdict.effect, half, 'power')}
        </span>
      )}
      {entry.state === 'dropped' && <span className={styles.soft}>{said.dropped}</span>}
    </>
  );
}
