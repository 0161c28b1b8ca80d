import { createContext, type ReactNode, useCallback, useContext, useMemo, useRef, useState } from 'react';
import type { Problem } from '../../core/result/index.ts';

export type Toast = {
  readonly id: number;
  readonly tone: 'plain' | 'problem';
  readonly text: string;
  /** Shown instead of `text` where something failed. */
  readonly problems: readonly Problem[];
  readonly action: { readonly label: string; readonly run: () => void } | null;
};

export type ToastsState = {
  readonly toasts: readonly Toast[];
  readonly say: (text: string, action?: Toast['action']) => void;
  readonly report: (problems: readonly Problem[]) => void;
  readonly dismiss: (id: number) => void;
};

const ToastsContext = createContext<ToastsState | null>(null);

/** Remarks that stand at a time: the newest of an import of many logs (common practice). */
const mostRemarks = 2;

/** Only remarks give way: a problem stays until it was read, however much is said after it. */
function withoutOldRemarks(toasts: readonly Toast[]): readonly Toast[] {
  const remarks = toasts.filter((t) => t.tone === 'plain');
  const old = new Set(remarks.slice(0, -mostRemarks));
  return toasts.filter((t) => !old.has(t));
}

/** What the program says in passing. A remark leaves by itself, a problem stays until it is read. */
export function ToastsProvider({ children }: { children: ReactNode }) {
  const [toasts, setToasts] = useState<readonly Toast[]>([]);
  const nextId = useRef(1);

  const dismiss = useCallback((id: number) => setToasts((old) => old.filter((t) => t.id !== id)), []);
  const add = useCallback(
    (toast: Omit<Toast, 'id'>) => {
      const id = nextId.current++;
      setToasts((old) => withoutOldRemarks([...old, { ...toast, id }]));
      if (toast.tone === 'plain') setTimeout(() => dismiss(id), 6000);
    },
    [dismiss],
  );
  const say = useCallback<ToastsState['say']>(
    (text, action = null) => add({ tone: 'plain', text, problems: [], action }),
    [add],
  );
  const report = useCallback<ToastsState['report']>(
    (problems) => {
      // A cancel was asked for; saying so again is noise.
      const told = problems.filter((p) => p.code !== 'contract/cancelled');
      if (told.length > 0) add({ tone: 'problem', text: '', problems: told, action: null });
    },
    [add],
  );

  const state = useMemo(() => ({ toasts, say, report, dismiss }), [toasts, say, report, dismiss]);
  return <ToastsContext value={state}>{children}</ToastsContext>;
}

export function useToasts(): ToastsState {
  const state = useContext(ToastsContext);
  if (!state) throw new Error('useToasts outside ToastsProvider');
  return state;
}
