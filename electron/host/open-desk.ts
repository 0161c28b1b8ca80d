import type { RequestContext, Snapshot } from '../../core/contract/index.ts';
import { ok, type Result } from '../../core/result/index.ts';
import { openSession } from '../store/index.ts';
import type { HostSetting } from './handlers.ts';
import type { LogWatch } from './log-watch.ts';
import { isSamePlace } from './same-place.ts';
import { createSessionDesk, type SessionDesk } from './session-desk.ts';

/** The desk that is open, shared by all handlers, and the watch that ends with it. */
export type Desk = {
  current: SessionDesk | null;
  readonly watch: LogWatch;
  /** Newest revision that any session of this host had: a screen knows another session by another revision. */
  revision: number;
};

/** Ends the watch, waits for what is being written and gives the folder free. */
export async function closeDesk(desk: Desk): Promise<Result<void>> {
  desk.watch.stop();
  const closed = await desk.current?.close();
  desk.current = null;
  return closed ?? ok(undefined);
}

const mostRecent = 12;

/** Opens and closes the one session of a host, one after the other, and tells every window of it. */
export type Opener = {
  open(folder: string, context: RequestContext): Promise<Result<Snapshot>>;
  close(): Promise<Result<Record<string, never>>>;
};

export function createOpener(
  { preferences, now, version }: Pick<HostSetting, 'preferences' | 'now' | 'version'>,
  desk: Desk,
  onChange: (revision: number) => void,
): Opener {
  /** Two windows may ask at the same moment, and the later would meet the lock of the earlier. */
  let opening: Promise<unknown> = Promise.resolve();
  function inTurn<T>(action: () => Promise<T>): Promise<T> {
    const turn = opening.then(action);
    opening = turn.catch(() => undefined);
    return turn;
  }

  function changed(revision: number): void {
    desk.revision = revision;
    onChange(revision);
  }

  async function deskOf(folder: string): Promise<Result<SessionDesk>> {
    const { current } = desk;
    // The same folder again, by whatever name, would meet its own lock. What could only be read may be free by now.
    if (current && (await isSamePlace(current.folder, folder)) && (await current.whyNotWritable()) === null)
      return ok(current);
    const opened = await openSession(folder, { now: now() });
    if (!opened.ok) return opened;
    await closeDesk(desk);
    const fresh = createSessionDesk(opened.value, version, now, changed, desk.revision + 1);
    desk.current = fresh;
    // Every other window has the session before on its screen.
    changed(desk.revision + 1);
    const { name } = opened.value.session;
    const { recent } = await preferences.get();
    const others = recent.filter((r) => r.folder !== folder);
    await preferences.set({ recent: [{ folder, name }, ...others].slice(0, mostRecent) });
    return ok(fresh);
  }

  return {
    open: async (folder, context) => {
      const opened = await inTurn(() => deskOf(folder));
      // Reading its logs may take long, and closing must not wait for that.
      return opened.ok ? ok(await opened.value.snapshot(context)) : opened;
    },
    close: () =>
      inTurn(async () => {
        const wasOpen = desk.current !== null;
        const closed = await closeDesk(desk);
        if (wasOpen) changed(desk.revision + 1);
        return closed.ok ? ok({}) : closed;
      }),
  };
}
