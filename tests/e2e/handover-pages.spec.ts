import { expect, test } from 'playwright/test';
import { pageBox } from '../../core/handover/index.ts';
import { askingHost } from '../support/asking-host.ts';
import { sampleCopy, temporaryFolder } from '../support/sample-copy.ts';

const pxPerMm = 96 / 25.4;

/**
 * How far a sheet may be from its picture: letters are smoothed otherwise from browser to browser, so a dot counts
 * from a tenth of full difference on, and four in a thousand may; one line of text moved by its height is more.
 */
const tolerance = { threshold: 0.1, maxDiffPixelRatio: 0.004, scale: 'css' } as const;

const sheets = [
  { name: 'full-a4-first', form: 'full', paper: 'A4', language: 'en' },
  { name: 'one-page-letter-de', form: 'one-page', paper: 'Letter', language: 'de' },
] as const;

for (const { name, ...look } of sheets)
  test(`the sheet ${name} looks as it did`, async ({ page }) => {
    const place = temporaryFolder();
    const asking = askingHost(place.folder);
    try {
      await asking.get('sessions.open', { folder: sampleCopy(place.folder) });
      const made = await asking.get('handover.export', { format: 'html', date: '2027-03-15', ...look });
      const { width, height, top, side, bottom } = pageBox(look);
      const [across, down] = [width - 2 * side, height - top - bottom].map((mm) => Math.floor(mm * pxPerMm));
      await page.setViewportSize({ width: across ?? 0, height: down ?? 0 });
      await page.emulateMedia({ media: 'print' });
      await page.setContent(Buffer.from(made.content, 'base64').toString());
      await page.evaluate(() => document.fonts.ready);
      await expect(page).toHaveScreenshot(`${name}.png`, tolerance);
    } finally {
      await asking.host.close();
      place.remove();
    }
  });
