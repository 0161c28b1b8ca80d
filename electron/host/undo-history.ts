import type { SessionState } from '../../core/session/index.ts';

type Step = {
  readonly before: SessionState;
  after: SessionState;
  readonly title: string;
  readonly joinKey: string | null;
};

/**
 * What can be undone and redone since the session was opened; older versions stand in its history folder.
 * Edits with one join key in a row are one step: a slider's way, a typed field.
 */
export function createUndoHistory() {
  const done: Step[] = [];
  let undone: Step[] = [];
  return {
    record(before: SessionState, after: SessionState, title: string, joinKey: string | null): void {
      const last = done.at(-1);
      if (last && joinKey !== null && last.joinKey === joinKey && undone.length === 0) last.after = after;
      else done.push({ before, after, title, joinKey });
      undone = [];
    },
    undo(): SessionState | null {
      const step = done.pop();
      if (!step) return null;
      undone.push(step);
      return step.before;
    },
    redo(): SessionState | null {
      const step = undone.pop();
      if (!step) return null;
      done.push(step);
      return step.after;
    },
    get undoTitle(): string | null {
      return done.at(-1)?.title ?? null;
    },
    get redoTitle(): string | null {
      return undone.at(-1)?.title ?? null;
    },
    clear(): void {
      done.length = 0;
      undone = [];
    },
  };
}
export type UndoHistory = ReturnType<typeof createUndoHistory>;
