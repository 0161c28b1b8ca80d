import { expect, test } from './support/workbench.ts';

test.describe('with twelve pulls an entry, and with one', () => {
  test.use({ startsWith: 'many-pulls' });

  test('24 pulls are laid over each other and every one is listed', async ({ page }) => {
    const ledger = page.getByRole('navigation', { name: 'Ledger' });
    await ledger.getByRole('button', { name: /^1 Boost/ }).click();
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(
      /^Boost from 1\.00 to 1\.08\sbar\sg gained/,
    );
    await expect(page.getByText(/^12 pulls against 12, third gear\./)).toBeVisible();
    await page.getByRole('tab', { name: /^Pulls\s*24/ }).click();
    await expect(page.getByRole('row', { name: /\bPull \d+/ })).toHaveCount(24);
    // What is decided asks for nothing more.
    await expect(page.getByRole('button', { name: 'What would decide it' })).toBeHidden();
  });

  test('what would decide it stands in a dialog, by key or button, with the ways to get there', async ({
    page,
  }) => {
    const ledger = page.getByRole('navigation', { name: 'Ledger' });
    await ledger.getByRole('button', { name: /^2 Spark/ }).click();
    // The entry shown before is undecided as well: wait for this one's pulls.
    await expect(page.getByText(/^1 pull against 12/)).toBeVisible();
    await page.getByRole('button', { name: 'What would decide it' }).click();
    const dialog = page.getByRole('dialog', { name: 'More pulls would decide it' });
    // The dialog asks the host for the verdict of the two; a busy machine takes its time.
    await expect(dialog).toBeVisible({ timeout: 60_000 });
    await expect(dialog.getByText(/^\d+ pulls?$/)).toBeVisible();
    await expect(dialog.getByText('Smallest effect seen now, 8 times in 10')).toBeVisible();
    await expect(dialog.getByRole('button', { name: 'Add pulls after' })).toBeVisible();
    await page.keyboard.press('Escape');
    await page.keyboard.press('w');
    await dialog.getByRole('button', { name: 'Drive “before” again' }).click();
    await expect(page.getByRole('dialog')).toContainText('again');
  });

  test('any two entries are chosen by keys alone', async ({ page }) => {
    const ledger = page.getByRole('navigation', { name: 'Ledger' });
    const side = (name: RegExp) => ledger.getByRole('button', { name });
    await expect(side(/^3 Lambda.* after$/)).toBeVisible();
    await expect(side(/^2 Spark.* before$/)).toBeVisible();
    await page.keyboard.press('Shift+K');
    await expect(side(/^1 Boost.* before$/)).toBeVisible();
    await page.keyboard.press('Shift+K');
    await expect(side(/^0 Baseline.* before$/)).toBeVisible();
    await page.keyboard.press('Shift+J');
    await expect(side(/^1 Boost.* before$/)).toBeVisible();
  });
});
