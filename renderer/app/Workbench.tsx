import { useDeferredValue } from 'react';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { ImportBar } from '../importing/ImportBar.tsx';
import { usePaste } from '../importing/use-paste.ts';
import { WindowDrop } from '../importing/WindowDrop.tsx';
import { RideScreen } from '../ride/RideScreen.tsx';
import { Notices } from '../shell/Notices.tsx';
import { TopBar } from '../shell/TopBar.tsx';
import { StartScreen } from '../start/StartScreen.tsx';
import { WatchBar } from '../watch/WatchBar.tsx';
import { AskAhead } from './AskAhead.tsx';
import { Dialogs } from './Dialogs.tsx';
import { Screen } from './Screen.tsx';
import { useActions } from './use-actions.ts';
import { useKeyActions } from './use-key-actions.ts';
import { AfterPaint, useDialog, useView } from './view.tsx';
import styles from './Workbench.module.css';

/** The window: bar, ledger, the screen, and the sheet that says what to do now. */
export function Workbench() {
  const { snapshot, isLoading } = useSession();
  const { screens } = useWords();
  // The bar follows a click at once, the screen in slices behind the paint; keys belong to what is seen.
  const screen = useDeferredValue(useView().screen);
  // What a session's screen is going to show is asked for before the screen is drawn, and worked out meanwhile.
  const isDrawn = useDeferredValue(snapshot !== null);
  const dialog = useDialog();
  const actions = useActions();
  // The passenger's view takes the whole window and only its own three keys.
  const isRide = snapshot !== null && screen === 'ride';
  usePaste();
  useKeyActions(actions, dialog !== null || isRide);
  if (snapshot && isRide) {
    return (
      <div className={styles.window}>
        <RideScreen snapshot={snapshot} />
        <Dialogs actions={actions} />
        <WindowDrop />
      </div>
    );
  }
  return (
    <div className={styles.window}>
      <TopBar actions={actions} />
      <WatchBar />
      <ImportBar />
      {snapshot ? (
        <>
          {screen === 'bench' && <AskAhead />}
          <Notices snapshot={snapshot} />
          {isDrawn && (
            <AfterPaint>
              <Screen name={screen} />
            </AfterPaint>
          )}
        </>
      ) : isLoading ? (
        <main className={styles.loading} id="main">
          {screens.shell.loading}
        </main>
      ) : (
        <StartScreen />
      )}
      <Dialogs actions={actions} />
      <WindowDrop />
    </div>
  );
}
