import { useSyncExternalStore } from 'react';

function subscribe(onChange: () => void): () => void {
  const observer = new MutationObserver(onChange);
  observer.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] });
  return () => observer.disconnect();
}

/** The set of tokens in force, so that what is drawn outside CSS follows it. */
export function useThemeName(): string {
  return useSyncExternalStore(subscribe, () => document.documentElement.dataset.theme ?? 'day');
}
