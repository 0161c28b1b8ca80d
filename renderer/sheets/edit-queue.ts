import type { SessionEdit } from '../../core/session/index.ts';
import type { TypedValue } from '../../core/units/index.ts';
import { editOf, type SheetDoc, withEdit, withValue } from './sheet-doc.ts';

/** One value as it was typed. `part` names what was typed in a value of several. */
export type SheetChange = {
  readonly path: string;
  readonly value: unknown;
  readonly typed: TypedValue | null;
  readonly part: string;
};

export type EditQueueOptions = {
  /** The document as the host last gave it; null where its session is no longer open. */
  readonly stored: () => SheetDoc | null;
  /** Has the host keep an edit; `stored` is the newer one when it is done. */
  readonly send: (edit: SessionEdit, part: string) => Promise<unknown>;
  /** Told what waits or is on its way, oldest first, whenever that changes. */
  readonly onChange: (waiting: readonly SheetChange[]) => void;
};

export type EditQueue = {
  /** Takes a change; one of the same part that has not been sent gives way to it. */
  readonly add: (change: SheetChange) => void;
  /** Sends what waits, one after the other. */
  readonly flush: () => Promise<void>;
};

/**
 * What was typed on a sheet, on its way to the host. An edit carries a whole part of the document, so each is
 * made of the newest stored document at the moment when it is sent, and never while another is on its way: of
 * two made side by side the later would take back the earlier.
 */
export function editQueue({ stored, send, onChange }: EditQueueOptions): EditQueue {
  let waiting: readonly SheetChange[] = [];
  /** How many of the waiting, from the oldest on, are on their way or next. */
  let due = 0;
  let isSending = false;

  const set = (next: readonly SheetChange[]) => {
    waiting = next;
    onChange(next);
  };

  const sendDue = async () => {
    if (isSending) return;
    isSending = true;
    try {
      for (let next = waiting[0]; next && due > 0; next = waiting[0]) {
        const doc = stored();
        const edit = doc && editWith(doc, next);
        if (edit) await send(edit, next.part);
        due--;
        set(waiting.slice(1));
      }
    } finally {
      isSending = false;
    }
  };

  return {
    add: (change) => {
      const last = waiting.length - 1;
      if (last >= due && waiting[last]?.part === change.part) {
        set([...waiting.slice(0, last), change]);
        return;
      }
      // What was typed before in other fields need not wait for its pause any more.
      due = waiting.length;
      set([...waiting, change]);
      void sendDue();
    },
    flush: async () => {
      due = waiting.length;
      await sendDue();
    },
  };
}

/** The edit that brings a change into a document; null where the schema refuses the value. */
export function editWith(doc: SheetDoc, { path, value, typed, part }: SheetChange): SessionEdit | null {
  return editOf(withValue(doc, path, value), path, typed, part);
}

/** The document with a change that the host has not answered yet. */
export function withChange(doc: SheetDoc, change: SheetChange): SheetDoc {
  const edit = editWith(doc, change);
  return edit ? withEdit(doc, edit) : doc;
}
