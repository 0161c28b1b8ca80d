import { expect, test } from './support/workbench.ts';

test.describe('with twelve pulls an entry, and with one', () => {
  test.use({ startsWith: 'many-pulls' });

  test('24 pulls are laid over each other and every one is listed', async ({ page }) => {
    const ledger = page.getByRole('navigation', { name: 'Ledger' });
    await ledger.getByRole('button', { name: /^1 Boost/ }).click();
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(
      /^Boost from 1\.00 to 1\.08\sbar gained/,
    );
    await expect(page.getByText(/^12 pulls against 12, third gear\./)).toBeVisible();
    await page.getByRole('tab', { name: /^Pulls\s*24/ }).click();
    await expect(page.getByRole('row', { name: /^Pull \d+/ })).toHaveCount(24);
    // What is decided asks for nothing more.
    await expect(page.getByRole('button', { name: 'What would decide it' })).toBeHidden();
  });
});
