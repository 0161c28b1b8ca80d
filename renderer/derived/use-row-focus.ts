import { type RefObject, useEffect, useRef } from 'react';

/**
 * The focus of a list whose rows are added and taken away by buttons that grow grey or go with them: a new row has it
 * at its first field; of a row that went, the one that took its place, else the button behind the list.
 *
 * @param count  rows that stand now
 * @returns      the list, and what is told which row is about to go
 */
export function useRowFocus(count: number): {
  readonly list: RefObject<HTMLUListElement | null>;
  readonly onGoing: (at: number) => void;
} {
  const list = useRef<HTMLUListElement>(null);
  const before = useRef(count);
  const going = useRef(0);
  useEffect(() => {
    const [old, root] = [before.current, list.current];
    before.current = count;
    if (!root || old === count) return;
    const at = count > old ? count - 1 : Math.min(going.current, count - 1);
    const field = root.children[at]?.querySelector('input');
    (field ?? root.nextElementSibling?.querySelector('button'))?.focus();
  }, [count]);
  return {
    list,
    onGoing: (at) => {
      going.current = at;
    },
  };
}
