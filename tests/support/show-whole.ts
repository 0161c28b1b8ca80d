import type { Page } from 'playwright';

/** More than the bars of a browser take in height, its frame in width. */
const bars_px = { width: 40, height: 200 };

/**
 * Makes the browser's window larger than the page in it. A Chromium without a head takes the room of its bars off the
 * window that was made as large as the page: the foot of the page then lies below the window, what is drawn there is
 * never shown, and event timing has a key pressed there wait for the next frame that is shown elsewhere.
 */
export async function showWhole(page: Page): Promise<void> {
  const viewport = page.viewportSize();
  if (!viewport) return;
  const session = await page.context().newCDPSession(page);
  const { windowId } = await session.send('Browser.getWindowForTarget');
  const bounds = { width: viewport.width + bars_px.width, height: viewport.height + bars_px.height };
  await session.send('Browser.setWindowBounds', { windowId, bounds });
  await session.detach();
}
