import type { Action, ActionGroup } from '../app/actions.ts';
import { Dialog } from '../components/Dialog.tsx';
import { Keys } from '../components/Keys.tsx';
import { useWords } from '../hooks/use-words.tsx';
import styles from './KeysDialog.module.css';

const groups: readonly ActionGroup[] = ['ledger', 'session', 'window'];

/** Every key there is, from the same list that runs them. */
export function KeysDialog({ actions, onClose }: { actions: readonly Action[]; onClose: () => void }) {
  const { screens } = useWords();
  const said = screens.shell;
  return (
    <Dialog title={said.keys} onClose={onClose} shape="widest">
      <p>{said.keysIntro}</p>
      <div className={styles.groups}>
        {groups.map((group) => (
          <section key={group} className={group === 'ledger' ? styles.long : undefined}>
            <h3 className={styles.group}>{said.keyGroups[group]}</h3>
            <ul>
              {actions
                .filter((a) => a.group === group && a.keys !== null)
                .map((a) => (
                  <li key={a.id} className={styles.line}>
                    <span>{a.title}</span>
                    <Keys keys={a.keys ?? ''} />
                  </li>
                ))}
            </ul>
          </section>
        ))}
      </div>
    </Dialog>
  );
}
