const openersOf = new WeakMap<Element, readonly HTMLElement[]>();

/**
 * Where the focus may go back to when what opens now is closed, the likeliest first: what has it, or the button of
 * the menu that closes with this; behind that where the dialog came from that has it, as it may close with this too.
 */
export function openersNow(): readonly HTMLElement[] {
  const here = document.activeElement;
  if (!(here instanceof HTMLElement) || here === document.body) return [];
  const trigger = here.closest('[role="menu"]') && document.querySelector<HTMLElement>(openMenu);
  const around = here.closest('[role="dialog"]');
  return [trigger || here, ...((around && openersOf.get(around)) ?? [])];
}

const openMenu = '[aria-haspopup][aria-expanded="true"]';

export function keepOpeners(dialog: Element, openers: readonly HTMLElement[]): void {
  openersOf.set(dialog, openers);
}

/** To the first that still stands, unless something else has the focus by now. */
export function returnFocus(openers: readonly HTMLElement[]): void {
  if (document.activeElement !== document.body) return;
  openers.find((opener) => opener.isConnected)?.focus({ preventScroll: true });
}
