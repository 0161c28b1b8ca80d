import type { Browser, BrowserContext } from 'playwright';

/**
 * From the start of the navigation until what `selector` finds has been painted [ms]: it is looked for in every
 * frame, and the frame after the one that holds it has painted it.
 */
export async function paintedAfter(
  browser: Browser,
  selector: string,
  open: (context: BrowserContext) => Promise<string>,
): Promise<number> {
  // A profile of its own: neither cache nor compiled code of the time before.
  const context = await browser.newContext({ viewport: { width: 1280, height: 720 } });
  try {
    const page = await context.newPage();
    await page.addInitScript((wanted) => {
      const look = () => {
        if (!document.querySelector(wanted)) return requestAnimationFrame(look);
        return requestAnimationFrame(() => Object.assign(window, { painted_ms: performance.now() }));
      };
      requestAnimationFrame(look);
    }, selector);
    await page.goto(await open(context), { waitUntil: 'commit' });
    const found = await page.waitForFunction(
      () => (window as unknown as { painted_ms?: number }).painted_ms,
      null,
      { timeout: 120_000 },
    );
    return (await found.jsonValue()) ?? Number.NaN;
  } finally {
    await context.close();
  }
}
