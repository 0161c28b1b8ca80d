import type { Page } from 'playwright/test';

/** Side of a cell in pixels of the screen. */
const cell_px = 4;

/**
 * The page as it stands once it has come to rest, averaged over cells of four by four pixels. At that grain the
 * strokes of letters become tones: how a system hints and smooths them no longer tells, where something stands
 * and how heavy it is still does.
 */
export async function coarsePicture(page: Page): Promise<Buffer> {
  await page.evaluate(() => document.fonts.ready);
  const picture = await atRest(page);
  // In a window of its own: another page of this one's context would come into the same window, which Playwright then
  // makes as small as the page; its foot would be missing in the next picture.
  const context = await page.context().browser()?.newContext();
  if (!context) throw new Error('the page has no browser of its own');
  try {
    const blank = await context.newPage();
    return Buffer.from(await blank.evaluate(average, [picture, cell_px] as const), 'base64');
  } finally {
    await context.close();
  }
}

/**
 * Two pictures in a row without any difference, between which the page had nothing left to do: charts draw
 * themselves a moment after the rest, and a page busy for longer than the wait looks as if it were at rest. Taken
 * by the browser itself: the test runner would prepare every frame by a script, and the handover's forbids them.
 */
async function atRest(page: Page): Promise<string> {
  const browser = await page.context().newCDPSession(page);
  const take = async () => (await browser.send('Page.captureScreenshot', { format: 'png' })).data;
  let last = await take();
  for (let tries = 0; tries < 40; tries++) {
    await page.waitForTimeout(400);
    await page.evaluate(() => new Promise((idle) => requestIdleCallback(() => requestAnimationFrame(idle))));
    const next = await take();
    if (next === last) return next;
    last = next;
  }
  throw new Error('the page does not come to rest');
}

/** Runs in a blank page: a browser can read and write PNG. */
async function average([base64, cell]: readonly [string, number]): Promise<string> {
  const bytes = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
  const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
  const context = new OffscreenCanvas(bitmap.width, bitmap.height).getContext('2d');
  if (!context) throw new Error('this browser draws no canvas');
  context.drawImage(bitmap, 0, 0);
  const fine = context.getImageData(0, 0, bitmap.width, bitmap.height).data;
  const [width, height] = [Math.floor(bitmap.width / cell), Math.floor(bitmap.height / cell)];
  const coarse = new ImageData(width, height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      for (let channel = 0; channel < 4; channel++) {
        let sum = 0;
        for (let dy = 0; dy < cell; dy++)
          for (let dx = 0; dx < cell; dx++)
            sum += fine[((y * cell + dy) * bitmap.width + x * cell + dx) * 4 + channel] ?? 0;
        coarse.data[(y * width + x) * 4 + channel] = Math.round(sum / (cell * cell));
      }
    }
  }
  const out = new OffscreenCanvas(width, height);
  out.getContext('2d')?.putImageData(coarse, 0, 0);
  const png = new Uint8Array(await (await out.convertToBlob({ type: 'image/png' })).arrayBuffer());
  return btoa(Array.from(png, (b) => String.fromCharCode(b)).join(''));
}
