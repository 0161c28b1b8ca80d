import { type KeyboardEvent, type RefObject, useEffect, useLayoutEffect, useRef } from 'react';
import { cx } from '../design/cx.ts';
import { placeBeside } from './place-beside.ts';
import styles from './Select.module.css';
import type { Option } from './Select.tsx';

export type OptionListProps<T extends string> = {
  readonly label: string;
  readonly anchor: RefObject<HTMLElement | null>;
  readonly options: readonly Option<T>[];
  /** The one that is chosen now; -1 is none. */
  readonly at: number;
  readonly onChoose: (option: Option<T>) => void;
  /** Left without a choice. */
  readonly onClose: () => void;
};

/** Letters typed within this time are one word that is looked for [ms]. */
const word_ms = 800;

/** The list of a select, above everything else: arrows, Home, End and letters move, Enter chooses, Escape leaves. */
export function OptionList<T extends string>(props: OptionListProps<T>) {
  const { label, anchor, options, at, onChoose, onClose } = props;
  const list = useRef<HTMLDivElement>(null);
  const word = useRef({ text: '', at_ms: 0 });
  const row = (i: number) => list.current?.querySelectorAll<HTMLElement>('[role="option"]')[i];

  useLayoutEffect(() => {
    const root = list.current;
    if (!root || !anchor.current) return;
    root.showPopover();
    placeBeside(root, anchor.current);
    root.querySelectorAll<HTMLElement>('[role="option"]')[Math.max(0, at)]?.focus();
    // Placed once, at the moment it opens.
  }, [anchor, at]);

  const leave = useRef(onClose);
  leave.current = onClose;
  useEffect(() => {
    const outside = (event: Event) => {
      const target = event.target as Node;
      if (!list.current?.contains(target) && !anchor.current?.contains(target)) leave.current();
    };
    // It goes along with what scrolls under it, and closes once its button is out of sight.
    const follow = (event: Event) => {
      const [root, button] = [list.current, anchor.current];
      if (!root || !button || !(event.target as Node).contains(button)) return;
      const { top, bottom } = button.getBoundingClientRect();
      if (bottom < 0 || top > window.innerHeight) leave.current();
      else placeBeside(root, button);
    };
    const close = () => leave.current();
    document.addEventListener('pointerdown', outside, true);
    document.addEventListener('scroll', follow, true);
    window.addEventListener('resize', close);
    return () => {
      document.removeEventListener('pointerdown', outside, true);
      document.removeEventListener('scroll', follow, true);
      window.removeEventListener('resize', close);
    };
  }, [anchor]);

  const onKeyDown = (event: KeyboardEvent) => {
    const here = options.findIndex((_, i) => row(i) === document.activeElement);
    const last = options.length - 1;
    const moves: Record<string, number> = {
      ArrowDown: Math.min(last, here + 1),
      ArrowUp: Math.max(0, here - 1),
      Home: 0,
      End: last,
    };
    const to = moves[event.key] ?? startsWith(event);
    const chosen = event.key === 'Enter' || event.key === ' ' ? options[here] : undefined;
    if (event.key === 'Tab' || event.key === 'Escape') onClose();
    else if (chosen) onChoose(chosen);
    else if (to !== undefined) row(to)?.focus();
    else return;
    // Escape would close the dialog that the list stands in, too.
    event.preventDefault();
    event.stopPropagation();
  };
  const startsWith = (event: KeyboardEvent): number | undefined => {
    if (event.key.length !== 1 || event.key === ' ' || event.ctrlKey || event.metaKey || event.altKey)
      return undefined;
    const isNew = event.timeStamp - word.current.at_ms > word_ms;
    word.current = {
      text: (isNew ? '' : word.current.text) + event.key.toLowerCase(),
      at_ms: event.timeStamp,
    };
    const found = options.findIndex((o) => o.label.toLowerCase().startsWith(word.current.text));
    return found < 0 ? undefined : found;
  };
  return (
    <div
      ref={list}
      popover="manual"
      role="listbox"
      aria-label={label}
      tabIndex={-1}
      onKeyDown={onKeyDown}
      className={styles.list}
    >
      {options.map((option, i) => (
        // biome-ignore lint/a11y/useKeyWithClickEvents: the list hears the keys for all of them
        <div
          key={option.id}
          role="option"
          tabIndex={-1}
          aria-selected={i === at}
          onClick={() => onChoose(option)}
          onPointerMove={(event) => event.currentTarget.focus({ preventScroll: true })}
          className={cx(styles.item, i === at && styles.chosen)}
        >
          <span>{option.label}</span>
          {option.hint && <span className={styles.itemHint}>{option.hint}</span>}
        </div>
      ))}
    </div>
  );
}
