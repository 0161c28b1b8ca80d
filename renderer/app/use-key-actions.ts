import { useLayoutEffect, useRef } from 'react';
import { type Action, keysOf } from './actions.ts';

/** Where letters belong to the field that has the focus. */
export const typingFields =
  'input:not([type="range"]), textarea, select, [contenteditable="true"], [role="textbox"], [role="combobox"]';

/**
 * Runs the action whose keys are pressed. A field that is typed in keeps its letters and its own undo; while a
 * dialog or a menu is open only it listens.
 */
export function useKeyActions(actions: readonly Action[], isBlocked: boolean): void {
  const current = useRef({ actions, isBlocked });
  // Before the paint: a key that answers to what is seen is never lost.
  useLayoutEffect(() => {
    current.current = { actions, isBlocked };
  });
  useLayoutEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.isComposing || event.repeat) return;
      const target = event.target instanceof Element ? event.target : null;
      if (target?.closest('[role="menu"], [role="listbox"]')) return;
      const keys = keysOf(event);
      if (target?.closest(typingFields) && keys !== 'Mod+K') return;
      const { actions: list, isBlocked: blocked } = current.current;
      if (blocked) return;
      const action = list.find((a) => a.keys === keys && a.isEnabled);
      if (!action) return;
      event.preventDefault();
      action.run();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}
