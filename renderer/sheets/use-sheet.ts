import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { SessionEdit } from '../../core/session/index.ts';
import { type TypedValue, unitOf } from '../../core/units/index.ts';
import { useSession } from '../hooks/use-session.tsx';
import { editOf, type SheetDoc, sheetDocOf, valueAt, withEdit, withValue } from './sheet-doc.ts';

export type Sheet = {
  readonly doc: SheetDoc;
  /**
   * False where the field can't hold the value; nothing is changed then. `part` names what was typed in a value
   * of several: edits of one part in a row are one step of undo, and `typed` is kept under it.
   */
  readonly put: (path: string, value: unknown, typed?: TypedValue | null, part?: string) => boolean;
  /** How a number was written, where it still is the number that is kept. */
  readonly typedAt: (path: string, edgeUnit: string) => TypedValue | null;
};

/** Time in which further keystrokes still belong to the same edit; the screen itself follows at once. */
const pause_ms = 250;

/**
 * The sheets' document: what is typed shows at once and is sent to the host after a short pause, as one step of
 * undo for each field.
 */
export function useSheet(): Sheet | null {
  const { snapshot, edit } = useSession();
  const stored = useMemo(() => (snapshot ? sheetDocOf(snapshot.session) : null), [snapshot]);
  const [draft, setDraft] = useState<SheetDoc | null>(null);
  const waiting = useRef<{ change: SessionEdit; part: string; typed: TypedValue | null } | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);

  const send = useCallback(async () => {
    clearTimeout(timer.current);
    const next = waiting.current;
    if (!next) return;
    waiting.current = null;
    await edit(next.change, next.part);
    if (!waiting.current) setDraft(null);
  }, [edit]);

  // What was typed last must not be lost with the screen.
  const latestSend = useRef(send);
  useEffect(() => {
    latestSend.current = send;
  });
  useEffect(() => () => void latestSend.current(), []);

  const doc = draft ?? stored;
  const current = useRef(doc);
  current.current = doc;
  const asTyped = snapshot?.session.asTyped;

  return useMemo(() => {
    if (!doc) return null;
    return {
      doc,
      put: (path, value, typed = null, part = path) => {
        if (!current.current) return false;
        const change = editOf(withValue(current.current, path, value), path, typed, part);
        if (!change) return false;
        if (waiting.current && waiting.current.part !== part) void send();
        const next = withEdit(current.current, change);
        current.current = next;
        waiting.current = { change, part, typed };
        setDraft(next);
        clearTimeout(timer.current);
        timer.current = setTimeout(() => void latestSend.current(), pause_ms);
        return true;
      },
      typedAt: (path, edgeUnit) => {
        const value = valueAt(doc, path);
        if (typeof value !== 'number') return null;
        const typed =
          waiting.current?.part === path && waiting.current.typed ? waiting.current.typed : asTyped?.[path];
        if (typed && isSame(typed, value, edgeUnit)) return { value: typed.value, unit: typed.unit };
        return { value, unit: edgeUnit };
      },
    };
  }, [doc, asTyped, send]);
}

function isSame(typed: { value: number; unit: string }, value: number, edgeUnit: string): boolean {
  const [from, to] = [unitOf(typed.unit), unitOf(edgeUnit)];
  if (from.kind !== to.kind) return false;
  const kept = (typed.value * from.factor + from.offset - to.offset) / to.factor;
  return Math.abs(kept - value) <= 1e-9 + 1e-6 * Math.abs(value);
}
