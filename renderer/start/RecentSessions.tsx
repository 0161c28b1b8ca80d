import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { useAnswer } from '../hooks/use-answer.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './RecentSessions.module.css';

export type RecentSessionsProps = { readonly onOpen: (folder: string) => void; readonly isDisabled: boolean };

/** The sessions in the usual folder, newest first, as the host lists them. */
export function RecentSessions({ onOpen, isDisabled }: RecentSessionsProps) {
  const { screens, show } = useWords();
  const showView = useShow();
  const list = useAnswer('sessions.list', {}, 0);
  const sessions = list.value?.sessions ?? [];
  return (
    <section className={styles.recent} aria-label={screens.start.recent}>
      <div className={styles.head}>
        <h2>{screens.start.recent}</h2>
        <Button look="plain" onPress={() => showView({ dialog: { type: 'open-folder' } })}>
          {screens.start.openFolder}
        </Button>
      </div>
      {sessions.length === 0 ? (
        <p className={styles.none}>{screens.start.noRecent}</p>
      ) : (
        <ul className={styles.list}>
          {sessions.map((session) => (
            <li key={session.folder}>
              <button
                type="button"
                className={styles.session}
                disabled={isDisabled}
                onClick={() => onOpen(session.folder)}
              >
                <span className={styles.name}>{session.name}</span>
                {session.isInvented && <span className={styles.mark}>{screens.shell.invented}</span>}
                <span className={styles.date}>{session.createdAt ? show.date(session.createdAt) : ''}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
