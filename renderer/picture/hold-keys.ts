/** Keys that belong to the browser, or mean something only where the focus is. */
const notHeld = new Set(['Tab', 'Shift', 'Control', 'Alt', 'Meta', 'AltGraph', 'CapsLock']);

/**
 * Holds the keys that are pressed before the screen can hear them. The answer lets them go, in their order.
 *
 * @param page where keys come by and are let go again
 */
export function holdKeys(page: Window): () => void {
  const held: KeyboardEvent[] = [];
  const hold = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.repeat || notHeld.has(event.key)) return;
    event.stopImmediatePropagation();
    held.push(event);
  };
  page.addEventListener('keydown', hold, true);
  return () => {
    page.removeEventListener('keydown', hold, true);
    for (const { key, code, shiftKey } of held.splice(0))
      page.document.body.dispatchEvent(
        new KeyboardEvent('keydown', { key, code, shiftKey, bubbles: true, cancelable: true }),
      );
  };
}
