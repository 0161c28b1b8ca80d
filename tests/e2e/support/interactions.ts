import type { Page } from 'playwright/test';

/** A key or click that was painted late, as the browser's event timing has it. */
export type SlowInteraction = {
  readonly event: string;
  /** Role or tag, and name, of what it went to; empty where that is gone. */
  readonly target: string;
  /** To the next paint [ms]. */
  readonly duration_ms: number;
  /** Of that until the page could take it, and in its listeners; the rest is drawing and showing [ms]. */
  readonly waited_ms: number;
  readonly listeners_ms: number;
};

/** What people did in a page, and what of it was painted later than 100 ms. */
export type Interactions = {
  /** Keys and clicks. */
  readonly number: number;
  readonly slow: readonly SlowInteraction[];
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
    const slow = new Map<number, SlowInteraction>();
    const named = (node: Node | null) => {
      if (!(node instanceof Element)) return '';
      const name = node.getAttribute('aria-label') ?? node.textContent ?? '';
      return `${node.getAttribute('role') ?? node.localName} ${name.trim().slice(0, 40)}`.trim();
    };
    const observer = new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as (PerformanceEventTiming & { interactionId?: number })[])
        if (entry.interactionId && entry.duration > (slow.get(entry.interactionId)?.duration_ms ?? 0))
          slow.set(entry.interactionId, {
            event: entry.name,
            target: named(entry.target),
            duration_ms: entry.duration,
            waited_ms: Math.round(entry.processingStart - entry.startTime),
            listeners_ms: Math.round(entry.processingEnd - entry.processingStart),
          });
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
