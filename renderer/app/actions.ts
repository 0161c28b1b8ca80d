import type { ScreenName } from './view.tsx';

export type ActionGroup = 'session' | 'ledger' | 'window';

/** Declared once; menu, palette, key help and key handler are all made from the list. */
export type Action = {
  readonly id: string;
  readonly title: string;
  readonly group: ActionGroup;
  /** `Mod+K`, `J`, `?`; null for none. */
  readonly keys: string | null;
  readonly isEnabled: boolean;
  readonly run: () => void;
};

export const screenKeys: Readonly<Record<ScreenName, string>> = {
  setup: '1',
  plan: '2',
  bench: '3',
  ride: '4',
  handover: '5',
};

/** The keys of an event as an action writes them; a plain letter needs no shift to be itself. */
export function keysOf(
  event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'>,
): string {
  const key = event.key.length === 1 ? event.key.toUpperCase() : event.key;
  const isLetter = /^[A-Z]$/.test(key);
  return [
    event.ctrlKey || event.metaKey ? 'Mod' : '',
    event.altKey ? 'Alt' : '',
    event.shiftKey && (isLetter || event.key.length > 1) ? 'Shift' : '',
    key,
  ]
    .filter((part) => part !== '')
    .join('+');
}
