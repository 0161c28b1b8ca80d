import { type Entry, entryBefore, type Session } from '../../core/session/index.ts';

export type Selection = { readonly before: Entry | null; readonly after: Entry | null };

/**
 * The two entries on the bench: as chosen by hand, else the newest one that was driven against the one that it
 * is judged by. A choice whose entry is gone counts as none; an entry is never laid over itself.
 */
export function selectionOf(
  session: Session,
  chosen: { readonly beforeId: string | null; readonly afterId: string | null },
): Selection {
  const find = (id: string | null) => session.ledger.find((e) => e.id === id) ?? null;
  const after =
    find(chosen.afterId) ??
    session.ledger.findLast((e) => e.runs.length > 0) ??
    session.ledger.at(-1) ??
    null;
  if (!after) return { before: null, after: null };
  const before = find(chosen.beforeId);
  return { before: before && before.id !== after.id ? before : entryBefore(session, after.id), after };
}
