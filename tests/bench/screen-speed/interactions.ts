import type { Browser, Page } from 'playwright';
import { type TraceEvent, threadTimes } from './thread-times.ts';

export type Action = {
  readonly name: string;
  readonly run: (page: Page) => Promise<unknown>;
  /** What has to be done first and is not measured. */
  readonly before?: (page: Page) => Promise<unknown>;
  /** What has to stand afterwards: looked for when the page is at rest, as looking takes time of the page's own. */
  readonly after?: (page: Page) => Promise<unknown>;
};

export type Measured = {
  readonly name: string;
  /** Which event of the action was the slowest. */
  readonly event: string;
  /** From the key or click until the next paint, as the browser's own event timing has it; the slowest [ms]. */
  readonly event_ms: number;
  /** The part of it in which its listeners ran, by the clock [ms]. */
  readonly listeners_ms: number;
  /** Processor time of the page's thread within it [ms]: what the clock would read with nothing else running. */
  readonly own_ms: number;
  /** Longest task of the page's thread from the action until it came to rest, by its processor time [ms]. */
  readonly task_ms: number;
  /** Why the action could not be done; nothing was measured then. */
  readonly failed: string | null;
};

type Entry = {
  readonly name: string;
  readonly start: number;
  readonly duration: number;
  readonly listeners: number;
};

/** Written into the page before anything else runs. */
export function observeEvents(): void {
  const entries: Entry[] = [];
  Object.assign(window, { eventEntries: entries });
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries() as PerformanceEventTiming[])
      entries.push({
        name: entry.name,
        start: entry.startTime,
        duration: entry.duration,
        listeners: entry.processingEnd - entry.processingStart,
      });
  }).observe({ type: 'event', durationThreshold: 16, buffered: true } as PerformanceObserverInit);
}

/** After an action the page is left alone this long, so that what follows belongs to it [ms]. */
const rest_ms = 600;

/**
 * Does one action after the other and waits after each until the page has come to rest. Events shorter than
 * 16 ms are not told by the browser and stand as 0. An action that can't be done is told, and the walk goes on.
 */
export async function measure(
  browser: Browser,
  page: Page,
  actions: readonly Action[],
): Promise<readonly Measured[]> {
  await browser.startTracing(page, { categories: ['toplevel', 'devtools.timeline', 'blink.user_timing'] });
  const spans: { name: string; from: number; to: number; failed: string | null }[] = [];
  for (const [i, { name, run, before, after }] of actions.entries()) {
    let failed: string | null = null;
    let from = 0;
    try {
      if (before) {
        await before(page);
        await page.waitForTimeout(rest_ms);
      }
      from = await mark(page, `action ${i}`);
      await run(page);
    } catch (error) {
      failed = firstLines(error);
      // Whatever stands open now would be in the way of everything after it.
      for (let i = 0; i < 3; i++) await page.keyboard.press('Escape');
    }
    await page.waitForTimeout(rest_ms);
    const to = await mark(page, `rest ${i}`);
    try {
      if (failed === null) await after?.(page);
    } catch (error) {
      failed = firstLines(error);
    }
    spans.push({ name, from, to, failed });
  }
  const trace = JSON.parse((await browser.stopTracing()).toString()) as { traceEvents: TraceEvent[] };
  const entries = await page.evaluate(() => (window as unknown as { eventEntries: Entry[] }).eventEntries);
  return spans.map(({ name, from, to, failed }, i) => {
    const own = entries.filter(({ start }) => start >= from && start < to);
    const slowest = own.reduce((worst, e) => (e.duration > worst.duration ? e : worst), {
      name: '',
      start: from,
      duration: 0,
      listeners: 0,
    });
    const thread = threadTimes(trace.traceEvents, {
      first: `action ${i}`,
      last: `rest ${i}`,
      from_ms: slowest.start - from,
      for_ms: slowest.duration,
    });
    return {
      name,
      failed,
      event: slowest.name,
      event_ms: slowest.duration,
      listeners_ms: slowest.listeners,
      own_ms: thread.within_ms,
      task_ms: thread.longest_ms,
    };
  });
}

const firstLines = (error: unknown) => String(error).split('\n').slice(0, 4).join(' ');
const mark = (page: Page, name: string) => page.evaluate((n) => performance.mark(n).startTime, name);
