import { createContext, type ReactNode, useContext, useMemo } from 'react';
import type { Entry, Session } from '../../core/session/index.ts';
import { useAhead } from './use-ahead.ts';
import { useSession } from './use-session.tsx';

export type Entries = {
  /** The ledger, with what was dropped and kept here and is not answered yet. */
  readonly ledger: Session['ledger'];
  /** Drops an entry or keeps it; resolves when the host has answered. */
  readonly setState: (entryId: string, state: Entry['state']) => Promise<boolean>;
};

const EntriesContext = createContext<Entries | null>(null);

type Change = { readonly entryId: string; readonly state: Entry['state'] };

const withState = (ledger: Session['ledger'], { entryId, state }: Change): Session['ledger'] =>
  ledger.map((e) => (e.id === entryId ? { ...e, state } : e));

const none: Session['ledger'] = [];

/** One for the key and the ledger: a second key that comes before the answer is made of the first. */
export function EntriesProvider({ children }: { children: ReactNode }) {
  const { snapshot, edit } = useSession();
  const [ledger, put] = useAhead(snapshot?.session.ledger ?? none, withState);
  const entries = useMemo(
    (): Entries => ({
      ledger,
      setState: (entryId, state) =>
        put({ entryId, state }, () => edit({ type: 'entry.set', entryId, patch: { state } })),
    }),
    [ledger, put, edit],
  );
  return <EntriesContext value={entries}>{children}</EntriesContext>;
}

export function useEntries(): Entries {
  const entries = useContext(EntriesContext);
  if (!entries) throw new Error('useEntries outside EntriesProvider');
  return entries;
}
