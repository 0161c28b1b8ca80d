import type { Page } from 'playwright/test';

/** What people did in a page, and what of it was painted later than 100 ms. */
export type Interactions = {
  /** Keys and clicks. */
  readonly number: number;
  /** Event and time to the next paint [ms], as the browser's event timing has it. */
  readonly slow: readonly { readonly event: string; readonly duration_ms: number }[];
};

/**
 * The browser keeps the slow ones by itself, up to 150; a script from the beginning would run in the summary's
 * frame too, which forbids them. Null for a page that is gone. What came before a reload is not in it.
 */
export async function readInteractions(page: Page): Promise<Interactions | null> {
  if (page.isClosed()) return null;
  return page.evaluate(async () => {
    const counts = (performance as unknown as { eventCounts: Map<string, number> }).eventCounts;
    // Pressing, letting go and the click are one.
    const slow = new Map<number, { event: string; duration_ms: number }>();
    const observer = new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as (PerformanceEventTiming & { interactionId?: number })[])
        if (entry.interactionId && entry.duration > (slow.get(entry.interactionId)?.duration_ms ?? 0))
          slow.set(entry.interactionId, { event: entry.name, duration_ms: entry.duration });
    });
    observer.observe({ type: 'event', durationThreshold: 104, buffered: true } as PerformanceObserverInit);
    // What is kept is told in a task of its own.
    await new Promise((resolve) => setTimeout(resolve, 50));
    observer.disconnect();
    return {
      number: (counts.get('keydown') ?? 0) + (counts.get('pointerup') ?? 0),
      slow: [...slow.values()],
    };
  });
}
