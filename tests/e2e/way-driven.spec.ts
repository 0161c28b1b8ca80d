import { expect, test } from './support/workbench.ts';

test('which way the pulls of a log went is said once for the log, shown at each pull, and undone', async ({
  page,
}) => {
  await page
    .getByRole('navigation', { name: 'Ledger' })
    .getByRole('button', { name: /^0 Baseline/ })
    .click();
  await page.getByRole('tab', { name: /Pulls/ }).click();
  const panel = page.getByRole('tabpanel', { name: /Pulls/ });
  const rows = panel.getByRole('row', { name: /0-baseline-a\.csv/ });
  const said = (row: number, word: RegExp) => rows.nth(row).getByRole('rowheader').getByText(word);
  await expect(said(0, /^back\b/)).toHaveCount(0);
  await panel.getByRole('button', { name: /Direction of the pulls in 0-baseline-a\.csv/ }).click();
  await page.getByRole('option', { name: 'By turns, back first' }).click();
  await expect(said(0, /^back\b/)).toBeVisible({ timeout: 30_000 });
  await expect(said(1, /^out\b/)).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(said(0, /^back\b/)).toHaveCount(0, { timeout: 30_000 });
});
