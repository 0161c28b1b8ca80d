import { useEffect, useMemo, useRef, useState } from 'react';
import { type TypedValue, unitOf } from '../../core/units/index.ts';
import { useSession } from '../hooks/use-session.tsx';
import { editQueue, editWith, type SheetChange, withChange } from './edit-queue.ts';
import { type SheetDoc, sheetDocOf, valueAt, withEdit } from './sheet-doc.ts';

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
  const { snapshot, latest, edit } = useSession();
  const stored = useMemo(() => (snapshot ? sheetDocOf(snapshot.session) : null), [snapshot]);
  const [waiting, setWaiting] = useState<readonly SheetChange[]>([]);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const doc = useMemo(() => stored && waiting.reduce(withChange, stored), [stored, waiting]);

  // Further keystrokes come before the screen has followed the last.
  const current = useRef(doc);
  current.current = doc;

  const folder = snapshot?.folder;
  const queue = useMemo(
    () =>
      editQueue({
        stored: () => {
          const newest = latest();
          return newest && newest.folder === folder ? sheetDocOf(newest.session) : null;
        },
        send: edit,
        onChange: setWaiting,
      }),
    [folder, latest, edit],
  );
  // What was typed last must not be lost with the screen.
  useEffect(() => () => void queue.flush(), [queue]);

  const asTyped = snapshot?.session.asTyped;

  return useMemo(() => {
    if (!doc) return null;
    return {
      doc,
      put: (path, value, typed = null, part = path) => {
        const change = { path, value, typed, part };
        const edited = current.current && editWith(current.current, change);
        if (!current.current || !edited) return false;
        current.current = withEdit(current.current, edited);
        queue.add(change);
        clearTimeout(timer.current);
        timer.current = setTimeout(() => void queue.flush(), pause_ms);
        return true;
      },
      typedAt: (path, edgeUnit) => {
        const value = valueAt(doc, path);
        if (typeof value !== 'number') return null;
        const typed = waiting.findLast((change) => change.part === path)?.typed ?? asTyped?.[path];
        if (typed && isSame(typed, value, edgeUnit)) return { value: typed.value, unit: typed.unit };
        return { value, unit: edgeUnit };
      },
    };
  }, [doc, asTyped, queue, waiting]);
}

function isSame(typed: { value: number; unit: string }, value: number, edgeUnit: string): boolean {
  const [from, to] = [unitOf(typed.unit), unitOf(edgeUnit)];
  if (from.kind !== to.kind) return false;
  const kept = (typed.value * from.factor + from.offset - to.offset) / to.factor;
  return Math.abs(kept - value) <= 1e-9 + 1e-6 * Math.abs(value);
}
