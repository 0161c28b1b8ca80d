import {
  createContext,
  type ReactNode,
  useCallback,
  useContext,
  useEffect,
  useMemo,
  useRef,
  useState,
} from 'react';
import type { RequestInput, Snapshot } from '../../core/contract/index.ts';
import type { Problems, Result } from '../../core/result/index.ts';
import type { SessionEdit } from '../../core/session/index.ts';
import { useHost } from '../host/HostProvider.tsx';
import { useToasts } from './use-toasts.tsx';

export type SessionState = {
  /** Null where no session is open. */
  readonly snapshot: Snapshot | null;
  /** The newest snapshot that any answer brought, also before the screen has followed it. */
  readonly latest: () => Snapshot | null;
  readonly isLoading: boolean;
  readonly open: (folder: string) => Promise<Result<Snapshot>>;
  readonly create: (input: RequestInput<'sessions.create'>) => Promise<Result<Snapshot>>;
  readonly close: () => Promise<void>;
  /** Edits with one `joinKey` in a row are one step of undo. */
  readonly edit: (edits: SessionEdit | SessionEdit[], joinKey?: string) => Promise<boolean>;
  readonly undo: () => Promise<void>;
  readonly redo: () => Promise<void>;
  /** For answers that bring a newer snapshot along, such as an import. */
  readonly take: (snapshot: Snapshot) => void;
};

const SessionContext = createContext<SessionState | null>(null);

/** The open session as the host has it: read as a snapshot, changed by sending edits. */
export function SessionProvider({ children }: { children: ReactNode }) {
  const host = useHost();
  const { report } = useToasts();
  const [snapshot, setSnapshot] = useState<Snapshot | null>(null);
  const [isLoading, setLoading] = useState(true);

  const newest = useRef<Snapshot | null>(null);
  const latest = useCallback(() => newest.current, []);
  const leave = useCallback(() => {
    newest.current = null;
    setSnapshot(null);
  }, []);

  /** An older answer that arrives late must not undo a newer one. */
  const take = useCallback((next: Snapshot) => {
    const old = newest.current;
    if (old && old.folder === next.folder && old.revision > next.revision) return;
    newest.current = next;
    setSnapshot(next);
  }, []);

  useEffect(() => {
    let isCurrent = true;
    const load = async () => {
      const answer = await host.request('session.get', {});
      if (!isCurrent) return;
      setLoading(false);
      if (!answer.ok) report(answer.problems);
      else if (answer.value) take(answer.value);
      else leave();
    };
    void load();
    const unsubscribe = host.subscribe((event) => {
      if (event.type === 'session-changed') void load();
    });
    return () => {
      isCurrent = false;
      unsubscribe();
    };
  }, [host, take, leave, report]);

  const orReport = useCallback(
    (answer: Result<Snapshot>): boolean => {
      if (answer.ok) take(answer.value);
      else report(answer.problems satisfies Problems);
      return answer.ok;
    },
    [take, report],
  );
  const edit = useCallback<SessionState['edit']>(
    async (edits, joinKey) => {
      const list = Array.isArray(edits) ? edits : [edits];
      return orReport(await host.request('session.edit', { edits: list, ...(joinKey ? { joinKey } : {}) }));
    },
    [host, orReport],
  );

  const state = useMemo((): SessionState => {
    const taken = (answer: Result<Snapshot>): Result<Snapshot> => {
      if (answer.ok) take(answer.value);
      return answer;
    };
    return {
      snapshot,
      latest,
      isLoading,
      edit,
      take,
      open: async (folder) => taken(await host.request('sessions.open', { folder })),
      create: async (input) => taken(await host.request('sessions.create', input)),
      close: async () => {
        const answer = await host.request('sessions.close', {});
        if (answer.ok) leave();
        else report(answer.problems);
      },
      undo: async () => void orReport(await host.request('session.undo', {})),
      redo: async () => void orReport(await host.request('session.redo', {})),
    };
  }, [host, snapshot, latest, isLoading, take, leave, edit, orReport, report]);

  return <SessionContext value={state}>{children}</SessionContext>;
}

export function useSession(): SessionState {
  const state = useContext(SessionContext);
  if (!state) throw new Error('useSession outside SessionProvider');
  return state;
}
