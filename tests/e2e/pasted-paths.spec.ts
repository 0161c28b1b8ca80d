import { join } from 'node:path';
import { expect, test } from './support/workbench.ts';

const looseLogs = join(import.meta.dirname, '../../sample-sessions/loose-logs');

test('a path that is pasted is imported like a file, from every screen', async ({ page }) => {
  await page.getByRole('heading', { level: 1 }).waitFor();
  const path = join(looseLogs, 'before-1.00-bar.csv');
  for (const screen of ['3', '1', '2', '5']) {
    await page.keyboard.press(screen);
    await page.evaluate((text) => {
      const clipboardData = new DataTransfer();
      clipboardData.setData('text/plain', text);
      document.body.dispatchEvent(
        new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }),
      );
    }, path);
    const dialog = page.getByRole('dialog', { name: 'Where do these logs belong?' });
    await expect(dialog).toContainText('before-1.00-bar.csv');
    await page.keyboard.press('Escape');
    await expect(dialog).toBeHidden();
  }
  await page.keyboard.press('Shift+I');
  const dialog = page.getByRole('dialog', { name: 'Import from a path' });
  await dialog.getByRole('textbox').fill('no path');
  await dialog.getByRole('button', { name: 'Import' }).click();
  await expect(dialog).toContainText('This is no path');
  await dialog.getByRole('textbox').fill(path);
  await dialog.getByRole('button', { name: 'Import' }).click();
  await page
    .getByRole('dialog', { name: 'Where do these logs belong?' })
    .getByRole('button', { name: 'Import' })
    .click();
  await expect(page.getByText(/before-1\.00-bar\.csv is in, with \d pulls/)).toBeVisible({
    timeout: 60_000,
  });
});
