import type { FolderWatch } from '../../core/contract/index.ts';
import { cx } from '../design/cx.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import styles from './WatchedLogs.module.css';
import { logWords } from './watch-words.ts';

/** What came since the watching began, the last to change first. */
export function WatchedLogs({ watch }: { watch: FolderWatch }) {
  const words = useWords();
  const { snapshot } = useSession();
  const said = words.screens.watch;
  return (
    <section>
      <h3 className={styles.title}>{said.logs}</h3>
      {watch.logs.length === 0 && <p className={styles.none}>{said.noLogs}</p>}
      <ul>
        {watch.logs.map((log) => {
          const state = logWords(log, watch.takes, snapshot?.runs ?? [], words);
          return (
            <li key={log.path} className={styles.log}>
              <span className={cx(state.isFault && styles.fault)}>{state.text}</span>
              <span className={styles.state}>{said.states[log.state]}</span>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
