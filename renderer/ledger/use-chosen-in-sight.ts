import { type RefObject, useEffect, useRef } from 'react';

const none = { before: null, after: null };

/**
 * Brings the row of a side into sight when the book is opened and once another entry stands there: keys step through
 * a long book without the pointer ever being on it. What was chosen by pointer is in sight already and stays where
 * it is. Once the book is worked out it is done again: rows with a reason under them have grown.
 */
export function useChosenInSight(
  box: RefObject<HTMLElement | null>,
  chosen: { readonly before: string | null; readonly after: string | null },
  isWorkedOut: boolean,
): void {
  const last = useRef<typeof chosen & { wasWorkedOut?: boolean }>(none);
  const { before, after } = chosen;
  useEffect(() => {
    if (isWorkedOut && !last.current.wasWorkedOut) last.current = none;
    const moved = [
      before === last.current.before ? null : before,
      // The entry judged comes last: where both can't be in sight, it is.
      after === last.current.after ? null : after,
    ];
    last.current = { before, after, wasWorkedOut: isWorkedOut };
    for (const id of moved) rowOf(box.current, id)?.scrollIntoView({ block: 'nearest' });
  }, [box, before, after, isWorkedOut]);
  // A bar that comes up above the book must not push the entry judged out of it.
  useEffect(() => {
    const book = box.current;
    if (!book) return;
    let height = book.clientHeight;
    const observer = new ResizeObserver(() => {
      const [was, is] = [height, book.clientHeight];
      height = is;
      const row = is < was ? rowOf(book, after) : null;
      if (!row) return;
      const bottom = row.getBoundingClientRect().bottom - book.getBoundingClientRect().top;
      if (bottom > is && bottom <= was) row.scrollIntoView({ block: 'nearest' });
    });
    observer.observe(book);
    return () => observer.disconnect();
  }, [box, after]);
}

function rowOf(book: HTMLElement | null, id: string | null): Element | null {
  if (id === null) return null;
  return book?.querySelector(`[data-entry="${CSS.escape(id)}"]`)?.closest('li') ?? null;
}
