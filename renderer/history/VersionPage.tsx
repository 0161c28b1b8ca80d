import type { RequestOutput } from '../../core/contract/index.ts';
import { entryTitle } from '../../core/words/index.ts';
import { useWords } from '../hooks/use-words.tsx';
import { changedWords } from './changed-words.ts';
import styles from './HistoryDialog.module.css';
import { whenWords } from './when-words.ts';

/** One earlier version, to look at only: its ledger, and what is different today. */
export function VersionPage({ looked }: { looked: RequestOutput<'history.read'> }) {
  const { screens, show } = useWords();
  const said = screens.history;
  const { version, session, differs, missingRuns } = looked;
  return (
    <article aria-label={said.readOnly}>
      <h3 className={styles.title}>
        {session.name} <span className={styles.mark}>{said.readOnly}</span>
      </h3>
      <p className={styles.soft}>
        {whenWords(version.at, show.language)}, {said.entries(version.entries)}
      </p>
      <h4 className={styles.head}>{said.against}</h4>
      <p>{differs.length === 0 ? said.same : changedWords(differs, screens, show)}</p>
      {missingRuns.length > 0 && <p className={styles.fault}>{said.missing(missingRuns.length)}</p>}
      <h4 className={styles.head}>{said.ledger}</h4>
      <ol className={styles.entries}>
        {session.ledger.map((entry, i) => (
          <li key={entry.id} className={styles.entry}>
            <span className={styles.number}>{i}</span>
            <span>
              {entryTitle(entry, show)}
              {entry.note !== '' && <span className={styles.note}>{entry.note}</span>}
            </span>
            <span className={styles.soft}>
              {said.logs(entry.runs.length)}
              {entry.state === 'dropped' && `, ${said.dropped}`}
            </span>
          </li>
        ))}
      </ol>
    </article>
  );
}
