import { memo } from 'react';
import type { Action } from '../app/actions.ts';
import { screenNames, useShow, useView } from '../app/view.tsx';
import { cx } from '../design/cx.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { ConditionsLine } from './ConditionsLine.tsx';
import { MainMenu } from './MainMenu.tsx';
import styles from './TopBar.module.css';
import { UndoButtons } from './UndoButtons.tsx';

/** Name, the five screens, the session, and the menu. */
export const TopBar = memo(function TopBar({ actions }: { actions: readonly Action[] }) {
  const { screens } = useWords();
  const { snapshot } = useSession();
  const view = useView();
  const show = useShow();
  return (
    <header className={styles.bar}>
      <a href="#main" className={styles.skip}>
        {screens.shell.skipToMain}
      </a>
      <span className={styles.product}>{screens.shell.product}</span>
      {snapshot && (
        <nav aria-label={screens.shell.mainNavigation} className={styles.nav}>
          {screenNames.map((name) => (
            <a
              key={name}
              href={`#${name}`}
              className={cx(styles.tab, view.screen === name && styles.here)}
              aria-current={view.screen === name ? 'page' : undefined}
              onClick={(event) => {
                event.preventDefault();
                show({ screen: name });
              }}
            >
              {screens.shell.screens[name]}
            </a>
          ))}
        </nav>
      )}
      <div className={styles.right}>
        {snapshot && <ConditionsLine session={snapshot.session} />}
        {snapshot && <UndoButtons actions={actions} />}
        <MainMenu actions={actions} />
      </div>
    </header>
  );
});
