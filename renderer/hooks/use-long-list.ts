import { defaultRangeExtractor, measureElement, type Range, useVirtualizer } from '@tanstack/react-virtual';
import {
  type FocusEvent,
  type KeyboardEvent,
  startTransition,
  useCallback,
  useEffect,
  useLayoutEffect,
  useRef,
  useState,
} from 'react';
import { afterPaint } from './after-paint.ts';

/** Up to here every row stands in the page; beyond, only those in sight, with room left for the others. */
export const longFrom = 60;
const beyondSight = 12;
/** How far a list that comes into the page is drawn, each step behind the paint of the one before it. */
const steps = ['room', 'in sight', 'beyond sight'] as const;
/** Rows that were never drawn have guessed heights; measuring them moves the others about for so long [ms]. */
const settling_ms = 500;

/** A row to draw, or the room of rows that are not drawn, the first of which is `index`. */
export type LongPart =
  | { readonly kind: 'row'; readonly index: number }
  | { readonly kind: 'gap'; readonly index: number; readonly height_px: number };

export type LongListOptions = {
  readonly count: number;
  /** Of a usual row, until it is measured. */
  readonly rowHeight_px: number;
  /** Rows that stay in the page wherever it is scrolled to, as headings do. */
  readonly pinned?: readonly number[];
};

/**
 * A list that may have thousands of rows, inside whatever scrolls around it. The row that has the focus stays in
 * the page; arrow keys, Home and End go from row to row, drawn or not, and Page keys ten rows at a time.
 *
 * `listProps` go to the list or table, `rowProps(index)` to each row.
 */
export function useLongList<E extends HTMLElement>({ count, rowHeight_px, pinned = [] }: LongListOptions) {
  const isLong = count > longFrom;
  const list = useRef<E>(null);
  const goTo = useRef<number | null>(null);
  const keptInSight = useRef<{ readonly index: number; readonly until: number } | null>(null);
  const [wanted, setActive] = useState(0);
  const active = Math.min(wanted, count - 1);
  const [scroller, setScroller] = useState<HTMLElement | null>(null);
  const [margin, setMargin] = useState(0);
  const [step, setStep] = useState(0);
  const isDrawn = steps[step] !== 'room';

  // What stands above the list may have changed with any drawing of it. Asked behind the paint: before it, the page
  // would be laid out there and then, in the task that draws the list.
  useEffect(() => {
    if (!isLong) return;
    return afterPaint(() => {
      if (!list.current) return;
      const around = scroller?.contains(list.current) ? scroller : scrollerOf(list.current);
      setScroller(around);
      const above = list.current.getBoundingClientRect().top - (around?.getBoundingClientRect().top ?? 0);
      setMargin(Math.round(above + (around?.scrollTop ?? 0)));
    });
  });

  // Rows by the dozen at once would hold the page for longer than a frame or two.
  useEffect(() => {
    if (!isLong) return setStep(0);
    if (!scroller || step === steps.length - 1) return;
    return afterPaint(() => startTransition(() => setStep(step + 1)));
  }, [isLong, scroller, step]);

  useEffect(() => {
    if (goTo.current === null) return;
    const row = list.current?.querySelector<HTMLElement>(`[data-index="${goTo.current}"]`);
    // A drawing that was under way when the key came does not have the row yet.
    if (!row) return;
    goTo.current = null;
    focusOf(row)?.focus();
  });

  // The row that a key led to would slide out of sight while those above it are measured.
  useLayoutEffect(() => {
    const kept = keptInSight.current;
    if (!kept) return;
    if (performance.now() > kept.until) {
      keptInSight.current = null;
      return;
    }
    list.current?.querySelector(`[data-index="${kept.index}"]`)?.scrollIntoView({ block: 'nearest' });
  });

  const virtualizer = useVirtualizer<HTMLElement, HTMLElement>({
    count,
    enabled: isLong,
    getScrollElement: () => scroller,
    estimateSize: () => rowHeight_px,
    // A row's height comes from its observer, in the same frame; read off the row it would lay the page out in between.
    measureElement: (row, entry, of) =>
      entry
        ? measureElement(row, entry, of)
        : (of.itemSizeCache.get(of.options.getItemKey(of.indexFromElement(row))) ?? rowHeight_px),
    scrollMargin: margin,
    overscan: steps[step] === 'beyond sight' ? beyondSight : 1,
    rangeExtractor: (range: Range) =>
      [...new Set([...defaultRangeExtractor(range), ...pinned, active])]
        .filter((index) => index >= 0 && index < count)
        .sort((a, b) => a - b),
  });

  const parts: LongPart[] = [];
  if (!isLong) {
    for (let index = 0; index < count; index++) parts.push({ kind: 'row', index });
  } else {
    let [end, next] = [margin, 0];
    const gapTo = (start: number) => {
      if (next < count && start - end > 0.5) parts.push({ kind: 'gap', index: next, height_px: start - end });
    };
    for (const item of virtualizer.getVirtualItems()) {
      if (!isDrawn && !pinned.includes(item.index) && item.index !== active) continue;
      gapTo(item.start);
      parts.push({ kind: 'row', index: item.index });
      [end, next] = [item.end, item.index + 1];
    }
    gapTo(margin + virtualizer.getTotalSize());
  }

  const onKeyDown = useCallback(
    (event: KeyboardEvent<E>) => {
      // A select in the row has opened its list with the key.
      if (event.defaultPrevented) return;
      const row = rowOf(event.target);
      if (!row || focusOf(row) !== event.target || event.altKey || event.ctrlKey || event.metaKey) return;
      const target = targetOf(event.key, Number(row.dataset.index), count);
      if (target === null) return;
      event.preventDefault();
      goTo.current = target;
      keptInSight.current = { index: target, until: performance.now() + settling_ms };
      setActive(target);
      // The row may be the active one already, and then nothing would be drawn anew.
      const there = list.current?.querySelector<HTMLElement>(`[data-index="${target}"]`);
      if (there) focusOf(there)?.focus();
    },
    [count],
  );
  const onFocus = useCallback((event: FocusEvent<E>) => {
    const row = rowOf(event.target);
    if (row) setActive(Number(row.dataset.index));
  }, []);

  return {
    isLong,
    parts,
    active,
    listProps: { ref: list, onKeyDown, onFocus },
    rowProps: (index: number) => ({
      'data-index': index,
      ...(isLong && { ref: virtualizer.measureElement }),
    }),
    /** Of a list item: its place among all, which the page can't tell from those that are drawn. */
    placeProps: (index: number) => (isLong ? { 'aria-posinset': index + 1, 'aria-setsize': count } : {}),
  };
}

/** The row that a key leads to from row `index`, or null for a key that leads nowhere. */
export function targetOf(key: string, index: number, count: number): number | null {
  const steps: Readonly<Record<string, number>> = {
    ArrowDown: 1,
    ArrowUp: -1,
    PageDown: 10,
    PageUp: -10,
    Home: -count,
    End: count,
  };
  const step = steps[key];
  return step === undefined ? null : Math.max(0, Math.min(count - 1, index + step));
}

function rowOf(target: EventTarget): HTMLElement | null {
  return target instanceof Element ? target.closest<HTMLElement>('[data-index]') : null;
}

/** The row itself where it takes the focus, else the first button in it. */
function focusOf(row: HTMLElement): HTMLElement | null {
  return row.hasAttribute('tabindex') ? row : row.querySelector<HTMLElement>('button');
}

function scrollerOf(element: HTMLElement): HTMLElement | null {
  let at = element.parentElement;
  while (at && !/auto|scroll/.test(getComputedStyle(at).overflowY)) at = at.parentElement;
  return at;
}
