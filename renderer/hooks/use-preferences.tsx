import {
  createContext,
  type ReactNode,
  useCallback,
  useContext,
  useLayoutEffect,
  useMemo,
  useState,
} from 'react';
import { defaultPreferences, type Preferences } from '../../core/contract/index.ts';
import { useHost } from '../host/HostProvider.tsx';
import { useTheme } from './use-theme.ts';

export type PreferencesState = {
  readonly preferences: Preferences;
  readonly set: (patch: Partial<Preferences>) => void;
};

const PreferencesContext = createContext<PreferencesState | null>(null);

type PreferencesProviderProps = {
  /** What was chosen, where it is known already. */
  readonly first?: Preferences | null;
  readonly children: ReactNode;
};

/** Language, units and light: the shell keeps them, the screen shows a change at once. */
export function PreferencesProvider({ first = null, children }: PreferencesProviderProps) {
  const host = useHost();
  const [preferences, setPreferences] = useState(first);

  // Before the paint: the answer may be there already.
  useLayoutEffect(() => {
    let isCurrent = true;
    host.request('preferences.get', {}).then((answer) => {
      if (isCurrent) setPreferences(answer.ok ? answer.value : firstPreferences());
    });
    return () => {
      isCurrent = false;
    };
  }, [host]);

  const set = useCallback(
    (patch: Partial<Preferences>) => {
      setPreferences((old) => ({ ...(old ?? firstPreferences()), ...patch }));
      void host.request('preferences.set', patch);
    },
    [host],
  );

  useTheme(preferences?.theme ?? 'system');

  const state = useMemo(() => preferences && { preferences, set }, [preferences, set]);
  if (!state) return null;
  return <PreferencesContext value={state}>{children}</PreferencesContext>;
}

/** Where nothing was ever chosen, the browser's own language decides between the two we have. */
function firstPreferences(): Preferences {
  return { ...defaultPreferences, language: navigator.language.startsWith('de') ? 'de' : 'en' };
}

export function usePreferences(): PreferencesState {
  const state = useContext(PreferencesContext);
  if (!state) throw new Error('usePreferences outside PreferencesProvider');
  return state;
}
