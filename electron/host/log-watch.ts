import type { FolderWatch, SoFar, WatchedLog } from '../../core/contract/index.ts';
import { fail, ok, type Problem, type Result } from '../../core/result/index.ts';
import {
  type FolderWatch as RunningWatch,
  type SeenLog,
  type WatchOptions,
  watchFolder,
} from '../store/index.ts';

/** What the watch asks of the open session: takes a log, and tells the run that it became. */
export type TakeLog = (
  path: string,
  entryId: string | null,
  /** An earlier, perhaps shorter, copy of the same file. */
  earlierRunId: string | null,
) => Promise<Result<{ readonly runId: string; readonly replaces: string | null }>>;

/** What the watch asks of the open session besides. */
export type WatchedSession = {
  readonly take: TakeLog;
  /** Reads a log that is still written; null where nothing can be said of it yet. */
  readonly look: (path: string) => Promise<SoFar | null>;
  /** The newest entry that was kept. */
  readonly newestEntry: () => string | null;
};

export type LogWatch = {
  readonly state: () => FolderWatch | null;
  readonly start: (folder: string, how: WatchTarget) => Promise<Result<FolderWatch>>;
  readonly stop: () => void;
};
export type WatchTarget = {
  readonly entryId: string | null;
  readonly follows: boolean;
  readonly takes: boolean;
};

const mostLogs = 100;
/** A growing log is read anew this often at the most. */
const betweenLooks_ms = 1_000;

/**
 * Watches one folder for the open session and takes each log once it is whole, one after the other. What a log
 * has become is kept in `state` and told on every change, so that a screen that comes late knows it too.
 */
export function createLogWatch(
  { take, look, newestEntry }: WatchedSession,
  now: () => string,
  tell: (watch: FolderWatch | null) => void,
  timing: Pick<WatchOptions, 'interval_ms' | 'settle_ms'> = {},
): LogWatch {
  let state: FolderWatch | null = null;
  let running: RunningWatch | null = null;
  let queue: Promise<void> = Promise.resolve();
  /** When each log was looked at last, by a clock that nobody sets; `Infinity` while a look is on its way. */
  const lookedAt = new Map<string, number>();

  const change = (next: FolderWatch | null) => {
    state = next;
    tell(next);
  };

  /** The line of one log, first in the list from now on. */
  function put(seen: SeenLog, patch: Partial<WatchedLog>): void {
    if (!state) return;
    const { name, path, size: size_bytes, isNew } = seen;
    const before = state.logs.find((one) => one.path === path);
    const blank = { state: 'growing' as const, runId: null, replaces: null, problems: [], soFar: null };
    const line: WatchedLog = {
      ...blank,
      ...before,
      name,
      path,
      size_bytes,
      isNew,
      changedAt: now(),
      ...patch,
    };
    change({ ...state, logs: [line, ...state.logs.filter((one) => one.path !== path)].slice(0, mostLogs) });
  }

  /** One look at a time for each log, and not at every listing: what came in meanwhile is seen by the next. */
  async function lookAt(seen: SeenLog, watch: RunningWatch): Promise<void> {
    if (performance.now() - (lookedAt.get(seen.path) ?? Number.NEGATIVE_INFINITY) < betweenLooks_ms) return;
    lookedAt.set(seen.path, Number.POSITIVE_INFINITY);
    // A half-written line may be anything; what can't be read yet is no fault to tell.
    const soFar = await look(seen.path).catch(() => null);
    lookedAt.set(seen.path, performance.now());
    const line = state?.logs.find((one) => one.path === seen.path);
    if (!soFar || running !== watch || !state || line?.state !== 'growing') return;
    change({ ...state, logs: state.logs.map((one) => (one === line ? { ...line, soFar } : one)) });
  }

  async function takeOne(seen: SeenLog, watch: RunningWatch): Promise<void> {
    // The target of this moment: a log that was driven for the entry before is whole only now.
    if (running !== watch || !state) return;
    if (state.follows) state = { ...state, entryId: newestEntry() };
    const earlier = state.logs.find((one) => one.path === seen.path)?.runId ?? null;
    // Our own fault must not end the watching: the next log may well go through.
    const taken = await take(seen.path, state.entryId, earlier).catch((error: unknown) => {
      const detail = (error instanceof Error ? error.message : String(error)).split('\n')[0] ?? '';
      return fail({ code: 'contract/internal', facts: { detail } });
    });
    if (running !== watch) return;
    if (taken.ok) put(seen, { state: 'taken', ...taken.value, problems: [] });
    else put(seen, { state: 'refused', problems: [...taken.problems] });
  }

  function stop(): void {
    running?.stop();
    running = null;
    if (state) change(null);
  }

  return {
    state: () => state,
    stop,
    async start(folder, asked) {
      const target = asked.follows ? { ...asked, entryId: newestEntry() } : asked;
      if (state?.folder === folder && running) {
        change({ ...state, ...target });
        return ok(state);
      }
      let mine: RunningWatch | null = null;
      const started = await watchFolder(
        folder,
        (seen) => {
          if (running !== mine || !mine) return;
          put(seen, { state: 'complete' });
          const watch = mine;
          if (state?.takes) queue = queue.then(() => takeOne(seen, watch));
        },
        {
          ...timing,
          onGrowing: (seen) => {
            if (running !== mine || !mine) return;
            put(seen, { state: 'growing' });
            void lookAt(seen, mine);
          },
          onProblem: (problem: Problem | null) => {
            if (running === mine && mine && state) change({ ...state, problem });
          },
        },
      );
      // The watch before it goes on where the new folder can't be watched.
      if (!started.ok) return started;
      running?.stop();
      mine = started.value;
      running = mine;
      const fresh = { folder, ...target, startedAt: now(), logs: [], problem: null };
      change(fresh);
      return ok(fresh);
    },
  };
}
