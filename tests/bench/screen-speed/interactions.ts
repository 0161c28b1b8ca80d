import type { Browser, Page } from 'playwright';

export type Action = { readonly name: string; readonly run: (page: Page) => Promise<unknown> };

export type Measured = {
  readonly name: string;
  /** From the key or click until the next paint, as the browser's own event timing has it [ms]. */
  readonly event_ms: number;
  /** Longest task of the page's thread that began in the action, by its processor time [ms]. */
  readonly task_ms: number;
};

type Entry = { readonly start: number; readonly duration: number };

/** Written into the page before anything else runs. */
export function observeEvents(): void {
  const entries: Entry[] = [];
  Object.assign(window, { eventEntries: entries });
  new PerformanceObserver((list) => {
    for (const { startTime, duration } of list.getEntries()) entries.push({ start: startTime, duration });
  }).observe({ type: 'event', durationThreshold: 16, buffered: true } as PerformanceObserverInit);
}

/**
 * Does one action after the other and waits after each until the page has come to rest. Events shorter than
 * 16 ms are not told by the browser and stand as 0.
 */
export async function measure(
  browser: Browser,
  page: Page,
  actions: readonly Action[],
): Promise<readonly Measured[]> {
  await browser.startTracing(page, { categories: ['toplevel', 'devtools.timeline', 'blink.user_timing'] });
  const spans: { name: string; from: number; to: number }[] = [];
  for (const [i, { name, run }] of actions.entries()) {
    const from = await mark(page, `action ${i}`);
    await run(page);
    await page.waitForTimeout(700);
    spans.push({ name, from, to: await mark(page, `rest ${i}`) });
  }
  const trace = JSON.parse((await browser.stopTracing()).toString()) as { traceEvents: TraceEvent[] };
  const entries = await page.evaluate(() => (window as unknown as { eventEntries: Entry[] }).eventEntries);
  return spans.map(({ name, from, to }, i) => {
    const own = entries.filter(({ start }) => start >= from && start < to);
    return {
      name,
      event_ms: Math.max(0, ...own.map(({ duration }) => duration)),
      task_ms: longestTask(trace.traceEvents, `action ${i}`, `rest ${i}`),
    };
  });
}

const mark = (page: Page, name: string) => page.evaluate((n) => performance.mark(n).startTime, name);

type TraceEvent = {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  /** Processor time of the thread [us]. */
  readonly tdur?: number;
};

/** Between two marks, on the thread that set them [ms]. */
function longestTask(events: readonly TraceEvent[], first: string, last: string): number {
  const from = events.find((e) => e.name === first);
  const to = events.find((e) => e.name === last);
  if (!from || !to) return Number.NaN;
  const durations = events
    .filter((e) => e.name.endsWith('RunTask') && e.pid === from.pid && e.tid === from.tid)
    .filter((e) => e.ts >= from.ts && e.ts < to.ts)
    .map((e) => (e.tdur ?? 0) / 1000);
  return Math.max(0, ...durations);
}
