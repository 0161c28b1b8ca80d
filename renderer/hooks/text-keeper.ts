export type TextKeeper = {
  /** Takes what stands in the field now; it is kept after a pause. */
  readonly change: (text: string) => void;
  /** Keeps what waits without the pause; resolves when it is kept. */
  readonly flush: () => Promise<void>;
};

/** A pause in typing after which the text is kept. */
const pause_ms = 300;

/**
 * Keeps a text while it is typed. One keeping follows the other, so that an earlier text never comes last; what
 * was typed while one was on its way is kept next, in its latest form.
 *
 * @param keep  keeps a text; resolves when it is kept
 */
export function textKeeper(keep: (text: string) => Promise<unknown>): TextKeeper {
  let waiting: string | null = null;
  let keeping: Promise<void> | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const keepAll = async () => {
    for (let text = waiting; text !== null; text = waiting) {
      waiting = null;
      await keep(text);
    }
  };
  const flush = (): Promise<void> => {
    clearTimeout(timer);
    keeping ??= keepAll().finally(() => {
      keeping = null;
    });
    return keeping;
  };
  return {
    change: (text) => {
      waiting = text;
      clearTimeout(timer);
      timer = setTimeout(() => void flush(), pause_ms);
    },
    flush,
  };
}
