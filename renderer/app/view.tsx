import {
  createContext,
  type ReactNode,
  useCallback,
  useContext,
  useDeferredValue,
  useEffect,
  useState,
} from 'react';
import type { ChangeDraft } from '../entry/change-draft.ts';
import { isDrawnOnce } from '../hooks/drawn-once.ts';
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
  | { readonly type: 'move-logs'; readonly runId: string | null }
  | { readonly type: 'columns'; readonly runId: string }
  | { readonly type: 'watch'; readonly folder?: string }
  | { readonly type: 'import-path' }
  | { readonly type: 'history' }
  | { readonly type: 'quick-note' }
  | { readonly type: 'derived' }
  | { readonly type: 'decide' }
  | { readonly type: 'leaning' }
  | { readonly type: 'drop-pull'; readonly runId: string; readonly pullId: string }
  | { readonly type: 'restore-pull'; readonly runId: string; readonly pullId: string }
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
  /** Channels that were chosen to be plotted, and along what; null is what a tuner looks at first. */
  readonly channels: readonly string[] | null;
  readonly channelsAlong: 'engineSpeed' | 'time';
  /** Open section of the setup sheet. */
  readonly section: string;
  /** Open sheet of the plan. */
  readonly planSheet: PlanSheetName;
};

const firstChoices: Omit<View, 'screen'> = {
  beforeId: null,
  afterId: null,
  band: null,
  tab: 'witnesses',
  pinnedPulls: [],
  channels: null,
  channelsAlong: 'engineSpeed',
  section: 'car',
  planSheet: 'fluid',
};

/** A change of the view, or of what stands over it. */
export type Shown = Partial<View> & { readonly dialog?: DialogView | null };
/** By what stands now, where a second change may come before the screen has followed the first. */
export type Show = (patch: Shown | ((view: View) => Partial<View>)) => void;

/** Apart from each other: a dialog that opens leaves the screen under it alone, and a button needs neither. */
const ViewContext = createContext<View | null>(null);
const DialogContext = createContext<DialogView | null | undefined>(undefined);
const ShowContext = createContext<Show | null>(null);

/** What a window shows when it opens: the screen that its address names, and nothing chosen by hand. */
export function firstView(): View {
  return { ...firstChoices, screen: screenOfHash() ?? 'bench' };
}

function screenOfHash(): ScreenName | null {
  if (isDrawnOnce) return null;
  const name = window.location.hash.slice(1);
  return screenNames.find((s) => s === name) ?? null;
}

/** What the window shows; the screen stands in the address, so that back and forward work. */
export function ViewProvider({ children }: { children: ReactNode }) {
  const [view, setView] = useState<View>(firstView);
  const [dialog, setDialog] = useState<DialogView | null>(null);
  const show: Show = useCallback((change) => {
    if (typeof change === 'function') return setView((old) => ({ ...old, ...change(old) }));
    const { dialog: next, ...patch } = change;
    if (next !== undefined) setDialog(next);
    if (Object.keys(patch).length > 0) setView((old) => ({ ...old, ...patch }));
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
  return (
    <ShowContext value={show}>
      <ViewContext value={view}>
        <DialogContext value={dialog}>{children}</DialogContext>
      </ViewContext>
    </ShowContext>
  );
}

/**
 * Lets what is inside follow the view in slices behind the paint, so that the click that changed it is answered
 * at once. What stands outside, such as the bar with the screens, follows in the same frame.
 */
export function AfterPaint({ children }: { children: ReactNode }) {
  return <ViewContext value={useDeferredValue(useView())}>{children}</ViewContext>;
}

export function useView(): View {
  const view = useContext(ViewContext);
  if (!view) throw new Error('useView outside ViewProvider');
  return view;
}

/** What stands over the window; null is nothing. */
export function useDialog(): DialogView | null {
  const dialog = useContext(DialogContext);
  if (dialog === undefined) throw new Error('useDialog outside ViewProvider');
  return dialog;
}

/** Changes the view, or what stands over it; never changes itself. */
export function useShow(): Show {
  const show = useContext(ShowContext);
  if (!show) throw new Error('useShow outside ViewProvider');
  return show;
}
