import type { Page } from 'playwright/test';

/** What people did in a page, and what of it was painted later than 100 ms. */
export type Interactions = {
  /** Keys and clicks. */
  readonly number: number;
  /** Event and time to the next paint [ms], as the browser's event timing has it. */
  readonly slow: readonly { readonly event: string; readonly duration_ms: number }[];
};

/** The page tells of every key and click from its first moment on. */
export async function watchInteractions(page: Page): Promise<void> {
  await page.addInitScript(() => {
    // Pressing, letting go and the click are one.
    const slow = new Map<number, Interactions['slow'][number]>();
    Object.assign(window, { slowInteractions: slow });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as (PerformanceEventTiming & { interactionId?: number })[])
        if (entry.interactionId && entry.duration > (slow.get(entry.interactionId)?.duration_ms ?? 0))
          slow.set(entry.interactionId, { event: entry.name, duration_ms: entry.duration });
    }).observe({ type: 'event', durationThreshold: 104, buffered: true } as PerformanceObserverInit);
  });
}

/** Null for a page that is gone. What came before a reload is not in it. */
export async function readInteractions(page: Page): Promise<Interactions | null> {
  if (page.isClosed()) return null;
  return page.evaluate(() => {
    const counts = (performance as unknown as { eventCounts: Map<string, number> }).eventCounts;
    const { slowInteractions } = window as unknown as {
      slowInteractions?: Map<number, Interactions['slow'][number]>;
    };
    return {
      number: (counts.get('keydown') ?? 0) + (counts.get('pointerup') ?? 0),
      slow: [...(slowInteractions?.values() ?? [])],
    };
  });
}
