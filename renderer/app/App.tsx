import { useCallback } from 'react';
import { I18nProvider } from 'react-aria-components';
import type { HostClient, Preferences, Snapshot } from '../../core/contract/index.ts';
import { Toasts } from '../components/Toasts.tsx';
import { EntriesProvider } from '../hooks/use-entries.tsx';
import { PreferencesProvider } from '../hooks/use-preferences.tsx';
import { SessionProvider } from '../hooks/use-session.tsx';
import { ToastsProvider } from '../hooks/use-toasts.tsx';
import { useWords, WordsProvider } from '../hooks/use-words.tsx';
import { HostProvider } from '../host/HostProvider.tsx';
import { ImportsProvider } from '../importing/use-imports.tsx';
import { WatchProvider } from '../watch/use-watch.tsx';
import { askOpening } from './ask-opening.ts';
import { ViewProvider } from './view.tsx';
import { Workbench } from './Workbench.tsx';

type AppProps = {
  readonly client: HostClient;
  /** What is known before anything is drawn; else the host is asked. */
  readonly first?: { readonly session: Snapshot | null; readonly preferences: Preferences };
};

/**
 * The whole workbench over one host. The session is asked for at once, beside the preferences and not after them:
 * the first verdict waits for both.
 */
export function App({ client, first }: AppProps) {
  const onFirst = useCallback((session: Snapshot) => askOpening(client, session), [client]);
  return (
    <HostProvider client={client}>
      <ToastsProvider>
        <SessionProvider onFirst={onFirst} {...(first && { first: first.session })}>
          <PreferencesProvider first={first?.preferences ?? null}>
            <WordsProvider>
              <Localised />
            </WordsProvider>
          </PreferencesProvider>
        </SessionProvider>
      </ToastsProvider>
    </HostProvider>
  );
}

function Localised() {
  const { language } = useWords().show;
  return (
    <I18nProvider locale={language === 'de' ? 'de-DE' : 'en-GB'}>
      <ViewProvider>
        <ImportsProvider>
          <WatchProvider>
            <EntriesProvider>
              <Workbench />
            </EntriesProvider>
            <Toasts />
          </WatchProvider>
        </ImportsProvider>
      </ViewProvider>
    </I18nProvider>
  );
}
