import {
  type KeyboardEvent,
  type MouseEvent,
  type ReactNode,
  useEffect,
  useLayoutEffect,
  useRef,
  useState,
} from 'react';
import { createPortal } from 'react-dom';
import { afterPaint } from '../hooks/after-paint.ts';
import { keepOpeners, openersNow, returnFocus } from './focus-return.ts';
import { isUppermost, quietenOthers, standOver } from './modal-stack.ts';
import { tabbableIn, tabTarget } from './tabbable.ts';

export type ModalProps = {
  /** The name of the dialog, or the ids of its heading and of what belongs to it. */
  readonly label?: string;
  readonly labelledBy?: string;
  readonly onClose: () => void;
  /** Of the veil over the window, of the box on it, of the dialog in the box. */
  readonly classes: readonly [veil: string, box: string, dialog: string];
  readonly children: ReactNode;
};

/**
 * Stands over the window and has every key. Escape and a click beside it close it; Tab goes round in it. The focus
 * starts at a field inside that asks for it, else at the first thing in it where that is typed in or ticked, else at
 * the dialog itself, which is read from its start; it goes back to where it came from.
 */
export function Modal({ label, labelledBy, onClose, classes, children }: ModalProps) {
  const veil = useRef<HTMLDivElement>(null);
  const dialog = useRef<HTMLDivElement>(null);
  const [openers] = useState(openersNow);
  const isPressOnVeil = useRef(false);
  const leave = useRef(onClose);
  leave.current = onClose;

  useLayoutEffect(() => {
    if (!veil.current || !dialog.current) return;
    keepOpeners(dialog.current, openers);
    // A field that asks for the focus has it by now.
    if (!dialog.current.contains(document.activeElement)) {
      const first = tabbableIn(dialog.current)[0];
      (first?.matches('input, textarea') ? first : dialog.current).focus({ preventScroll: true });
    }
    return standOver(veil.current);
  }, [openers]);
  useEffect(() => afterPaint(quietenOthers), []);
  // Not before the dialog has left the page: the page would be laid out twice.
  useEffect(() => () => returnFocus(openers), [openers]);

  const take = (event: Pick<KeyboardEvent, 'key' | 'shiftKey' | 'repeat' | 'preventDefault'>) => {
    const target = event.key === 'Tab' && dialog.current ? tabTarget(dialog.current, event.shiftKey) : null;
    // Held down it closes one dialog, not all that stand over each other.
    if (event.key === 'Escape') event.repeat || leave.current();
    else if (target) target.focus();
    else return;
    event.preventDefault();
  };
  const latest = useRef(take);
  latest.current = take;
  // Where what had the focus was taken away or went grey, keys go to the page and not to the dialog.
  useEffect(() => {
    const onKey = (event: globalThis.KeyboardEvent) => {
      if (!isUppermost(veil.current) || veil.current?.contains(event.target as Node)) return;
      // The key that opened it beside a field is still on its way up the page.
      if (!event.isComposing && !event.defaultPrevented) latest.current(event);
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  }, []);

  const onKeyDown = (event: KeyboardEvent) => {
    // Neither the sheet that asked for the dialog nor the window hears what is typed in it.
    event.stopPropagation();
    if (!event.defaultPrevented && !event.nativeEvent.isComposing) take(event);
  };
  const [veilClass, boxClass, dialogClass] = classes;
  return createPortal(
    // biome-ignore lint/a11y/noStaticElementInteractions: keys are those of the dialog in it; by key, Escape closes
    <div
      ref={veil}
      className={veilClass}
      onKeyDown={onKeyDown}
      onPointerDown={(event) => {
        isPressOnVeil.current = event.target === event.currentTarget;
      }}
      onClick={(event: MouseEvent) => {
        event.stopPropagation();
        // A text that was dragged over ends its press out here.
        if (isPressOnVeil.current && event.target === event.currentTarget) onClose();
      }}
    >
      <div className={boxClass}>
        <div
          ref={dialog}
          role="dialog"
          aria-modal="true"
          aria-label={label}
          aria-labelledby={labelledBy}
          tabIndex={-1}
          className={dialogClass}
        >
          {children}
        </div>
      </div>
    </div>,
    document.body,
  );
}
