import {
  createContext,
  type ReactNode,
  useCallback,
  useContext,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
} from 'react';
import type { RequestInput, Snapshot } from '../../core/contract/index.ts';
import type { Problems, Result } from '../../core/result/index.ts';
import type { SessionEdit } from '../../core/session/index.ts';
import { useHost } from '../host/HostProvider.tsx';
import { changeFollower } from './change-follower.ts';
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

/** For a request that changes the session of a snapshot and no other: another window may open another. */
export function onlyFor(snapshot: Snapshot | null): { readonly folder?: string } {
  return snapshot ? { folder: snapshot.folder } : {};
}

const SessionContext = createContext<SessionState | null>(null);

type SessionProviderProps = {
  /** Told of the session that was open when the window opened, before anything of it is drawn. */
  readonly onFirst?: (snapshot: Snapshot) => void;
  /** The open session where that is known already; null where none is. */
  readonly first?: Snapshot | null;
  readonly children: ReactNode;
};

/** The open session as the host has it: read as a snapshot, changed by sending edits. */
export function SessionProvider({ onFirst, first, children }: SessionProviderProps) {
  const host = useHost();
  const { report } = useToasts();
  const [snapshot, setSnapshot] = useState(first ?? null);
  const [isLoading, setLoading] = useState(first === undefined);

  const newest = useRef(first ?? null);
  const latest = useCallback(() => newest.current, []);
  const leave = useCallback(() => {
    newest.current = null;
    setSnapshot(null);
  }, []);

  /** An older answer that arrives late must not undo a newer one, nor the same one be drawn again. */
  const take = useCallback((next: Snapshot) => {
    const old = newest.current;
    if (old && old.folder === next.folder && old.revision >= next.revision) return;
    newest.current = next;
    setSnapshot(next);
  }, []);

  const isMounted = useRef(true);
  const load = useCallback(async (): Promise<Snapshot | null> => {
    const answer = await host.request('session.get', {});
    if (!isMounted.current) return null;
    setLoading(false);
    if (!answer.ok) report(answer.problems);
    else if (answer.value) take(answer.value);
    else leave();
    return answer.ok ? answer.value : null;
  }, [host, take, leave, report]);

  const follower = useMemo(
    () =>
      changeFollower(
        () => newest.current?.revision ?? null,
        () => void load(),
      ),
    [load],
  );

  // Before the paint: the answer may be there already, and then the first that is painted is the session.
  useLayoutEffect(() => {
    isMounted.current = true;
    void load().then((first) => first && onFirst?.(first));
    const unsubscribe = host.subscribe((event) => {
      if (event.type === 'session-changed') follower.hear(event.revision);
    });
    return () => {
      isMounted.current = false;
      unsubscribe();
    };
  }, [host, load, follower, onFirst]);

  // Two edits on their way side by side could reach the host in either order.
  const lastSent = useRef<Promise<unknown>>(Promise.resolve());
  /** Sends an edit once the one before it is answered, and takes what it made of the session. */
  const send = useCallback(
    (ask: () => Promise<Result<Snapshot>>): Promise<boolean> =>
      follower.during(async () => {
        const answer = lastSent.current.then(ask);
        lastSent.current = answer.catch(() => {});
        const done = await answer;
        if (done.ok) take(done.value);
        else report(done.problems satisfies Problems);
        return done.ok;
      }),
    [follower, take, report],
  );
  /** The host changes no other session than the one on this screen. */
  const shown = useCallback(() => onlyFor(newest.current), []);
  const edit = useCallback<SessionState['edit']>(
    (edits, joinKey) => {
      const list = Array.isArray(edits) ? edits : [edits];
      const meant = shown();
      return send(() =>
        host.request('session.edit', { edits: list, ...(joinKey ? { joinKey } : {}), ...meant }),
      );
    },
    [host, send, shown],
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
      open: (folder) => follower.during(async () => taken(await host.request('sessions.open', { folder }))),
      create: (input) => follower.during(async () => taken(await host.request('sessions.create', input))),
      close: () =>
        follower.during(async () => {
          const answer = await host.request('sessions.close', {});
          if (answer.ok) leave();
          else report(answer.problems);
        }),
      undo: async () => void (await send(() => host.request('session.undo', shown()))),
      redo: async () => void (await send(() => host.request('session.redo', shown()))),
    };
  }, [host, snapshot, latest, isLoading, take, leave, edit, send, report, follower, shown]);

  return <SessionContext value={state}>{children}</SessionContext>;
}

export function useSession(): SessionState {
  const state = useContext(SessionContext);
  if (!state) throw new Error('useSession outside SessionProvider');
  return state;
}
