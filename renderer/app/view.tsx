import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useState } from 'react';
import type { ChangeDraft } from '../entry/change-draft.ts';
import type { Incoming } from '../importing/incoming.ts';

export const screenNames = ['setup', 'plan', 'bench', 'ride', 'handover'] as const;
export type ScreenName = (typeof screenNames)[number];

/** Sheets of the plan, in the order of the work. */
export const planSheets = ['fluid', 'ladder', 'mixture', 'heat', 'tables'] as const;
export type PlanSheetName = (typeof planSheets)[number];

/** What stands over the window; null is nothing. */
export type DialogView =
  | { readonly type: 'palette' }
  | { readonly type: 'keys' }
  | { readonly type: 'units' }
  | { readonly type: 'open-folder' }
  | { readonly type: 'pack' }
  | { readonly type: 'unpack' }
  | { readonly type: 'merge' }
  | { readonly type: 'set-aside'; readonly file: string }
  | { readonly type: 'create'; readonly files: readonly Incoming[] }
  | { readonly type: 'assign'; readonly files: readonly Incoming[] }
  | { readonly type: 'entry'; readonly entryId: string | null; readonly draft?: ChangeDraft }
  | { readonly type: 'columns'; readonly runId: string }
  | { readonly type: 'watch'; readonly folder?: string }
  | { readonly type: 'import-path' }
  | { readonly type: 'history' }
  | { readonly type: 'quick-note' }
  | { readonly type: 'derived' }
  | { readonly type: 'decide' }
  | { readonly type: 'leaning' }
  | { readonly type: 'drop-pull'; readonly runId: string; readonly pullId: string }
  | { readonly type: 'trim-pull'; readonly runId: string; readonly pullId: string };

export type View = {
  readonly screen: ScreenName;
  /** Chosen by hand; null follows the ledger. */
  readonly beforeId: string | null;
  readonly afterId: string | null;
  /** Range of the comparison [rad/s]; null is all that both share. */
  readonly band: readonly [number, number] | null;
  readonly tab: string;
  /** Pulls whose channels stay in view whichever entries are on the bench. */
  readonly pinnedPulls: readonly string[];
  /** Open section of the setup sheet. */
  readonly section: string;
  /** Open sheet of the plan. */
  readonly planSheet: PlanSheetName;
  readonly dialog: DialogView | null;
};

const firstView: View = {
  screen: 'bench',
  beforeId: null,
  afterId: null,
  band: null,
  tab: 'witnesses',
  pinnedPulls: [],
  section: 'car',
  planSheet: 'fluid',
  dialog: null,
};

export type ViewState = { readonly view: View; readonly show: (patch: Partial<View>) => void };

const ViewContext = createContext<ViewState | null>(null);

function screenOfHash(): ScreenName | null {
  const name = window.location.hash.slice(1);
  return screenNames.find((s) => s === name) ?? null;
}

/** What the window shows; the screen stands in the address, so that back and forward work. */
export function ViewProvider({ children }: { children: ReactNode }) {
  const [view, setView] = useState<View>(() => ({ ...firstView, screen: screenOfHash() ?? 'bench' }));
  const show = useCallback((patch: Partial<View>) => {
    setView((old) => ({ ...old, ...patch }));
    if (patch.screen && screenOfHash() !== patch.screen) window.location.hash = patch.screen;
  }, []);
  useEffect(() => {
    const onHash = () => {
      const screen = screenOfHash();
      if (screen) setView((old) => (old.screen === screen ? old : { ...old, screen }));
    };
    window.addEventListener('hashchange', onHash);
    return () => window.removeEventListener('hashchange', onHash);
  }, []);
  const state = useMemo(() => ({ view, show }), [view, show]);
  return <ViewContext value={state}>{children}</ViewContext>;
}

export function useView(): ViewState {
  const state = useContext(ViewContext);
  if (!state) throw new Error('useView outside ViewProvider');
  return state;
}
