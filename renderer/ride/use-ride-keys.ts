import { useLayoutEffect, useRef } from 'react';

export type RideKeys = {
  readonly mark: () => void;
  readonly undo: () => void;
  readonly leave: () => void;
};

/** The three keys of the ride view and no others: a bumpy road hits many. */
export function useRideKeys(keys: RideKeys, isBlocked: boolean): void {
  const current = useRef({ keys, isBlocked });
  useLayoutEffect(() => {
    current.current = { keys, isBlocked };
  });
  useLayoutEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const { keys: now, isBlocked: blocked } = current.current;
      if (blocked || event.defaultPrevented || event.repeat) return;
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const run = { ' ': now.mark, Backspace: now.undo, Escape: now.leave }[event.key];
      if (!run) return;
      event.preventDefault();
      run();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}
