import { useEffect, useMemo, useRef, useState } from 'react';
import { textKeeper } from './text-keeper.ts';

export type TypedText = {
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly onBlur: () => void;
};

/**
 * A text that is kept as it is typed: after a pause, when the field is left, and when its screen goes.
 *
 * @param kept  what stands where nobody types; undo changes it as well
 * @param keep  keeps a text; resolves when it is kept
 */
export function useTypedText(kept: string, keep: (text: string) => Promise<unknown>): TypedText {
  const [draft, setDraft] = useState<string | null>(null);
  const latest = useRef(keep);
  useEffect(() => {
    latest.current = keep;
  });
  const keeper = useMemo(() => textKeeper((text) => latest.current(text)), []);
  useEffect(() => () => void keeper.flush(), [keeper]);
  return {
    value: draft ?? kept,
    onChange: (text) => {
      setDraft(text);
      keeper.change(text);
    },
    onBlur: () => void keeper.flush().then(() => setDraft(null)),
  };
}
