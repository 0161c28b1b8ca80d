import { useCallback, useEffect, useRef, useState } from 'react';

export type TypedText = {
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly onBlur: () => void;
};

/** A pause in typing after which the text is kept. */
const pause_ms = 300;

/**
 * A text that is kept as it is typed: after a pause, when the field is left, and when its screen goes. One
 * keeping follows the other, so that an earlier text never comes last.
 *
 * @param kept  what stands where nobody types; undo changes it as well
 * @param keep  keeps a text; resolves when it is kept
 */
export function useTypedText(kept: string, keep: (text: string) => Promise<unknown>): TypedText {
  const [draft, setDraft] = useState<string | null>(null);
  const waiting = useRef<string | null>(null);
  const keeping = useRef<Promise<void> | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const latest = useRef(keep);
  useEffect(() => {
    latest.current = keep;
  });

  const flush = useCallback((): Promise<void> => {
    clearTimeout(timer.current);
    // With nothing to keep, a run would be over before it is noted below, and no later one would ever begin.
    if (waiting.current === null) return keeping.current ?? Promise.resolve();
    const run = async () => {
      try {
        for (let text = waiting.current; text !== null; text = waiting.current) {
          waiting.current = null;
          await latest.current(text);
        }
      } finally {
        keeping.current = null;
      }
    };
    keeping.current ??= run();
    return keeping.current;
  }, []);
  useEffect(() => () => void flush(), [flush]);

  return {
    value: draft ?? kept,
    onChange: (text) => {
      setDraft(text);
      waiting.current = text;
      clearTimeout(timer.current);
      timer.current = setTimeout(() => void flush(), pause_ms);
    },
    onBlur: () => void flush().then(() => setDraft(null)),
  };
}
