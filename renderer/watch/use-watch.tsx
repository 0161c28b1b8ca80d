import { createContext, type ReactNode, useContext, useEffect, useMemo, useState } from 'react';
import type { FolderWatch } from '../../core/contract/index.ts';
import type { Result } from '../../core/result/index.ts';
import { usePreferences } from '../hooks/use-preferences.tsx';
import { useSession } from '../hooks/use-session.tsx';
import { useToasts } from '../hooks/use-toasts.tsx';
import { useHost } from '../host/HostProvider.tsx';

export type WatchState = {
  /** The watch of the open session, null where none runs. */
  readonly watch: FolderWatch | null;
  /** New logs join the newest entry that is kept. */
  readonly start: (folder: string) => Promise<Result<FolderWatch>>;
  readonly stop: () => Promise<void>;
};

const WatchContext = createContext<WatchState | null>(null);

/** The folder that the host watches, as it tells it. */
export function WatchProvider({ children }: { children: ReactNode }) {
  const host = useHost();
  const { report } = useToasts();
  const { set } = usePreferences();
  const { snapshot } = useSession();
  const [watch, setWatch] = useState<FolderWatch | null>(null);
  const folder = snapshot?.folder ?? null;

  useEffect(() => {
    let isTold = false;
    const unsubscribe = host.subscribe((event) => {
      if (event.type !== 'watch-changed') return;
      isTold = true;
      setWatch(event.watch);
    });
    // What was told meanwhile is newer than the answer.
    void host.request('watch.get', {}).then((answer) => {
      if (answer.ok && !isTold) setWatch(answer.value);
    });
    return unsubscribe;
  }, [host]);

  const state = useMemo((): WatchState => {
    const meant = folder === null ? {} : { session: folder };
    return {
      watch: folder === null ? null : watch,
      start: async (path) => {
        const answer = await host.request('watch.start', { folder: path, follows: true, ...meant });
        if (answer.ok) set({ watched: path });
        return answer;
      },
      stop: async () => {
        const answer = await host.request('watch.stop', meant);
        if (!answer.ok) report(answer.problems);
      },
    };
  }, [host, report, set, watch, folder]);
  return <WatchContext value={state}>{children}</WatchContext>;
}

export function useWatch(): WatchState {
  const state = useContext(WatchContext);
  if (!state) throw new Error('useWatch outside WatchProvider');
  return state;
}
