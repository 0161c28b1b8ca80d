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
  await expect(rows.first()).not.toContainText('out, counts');
  const way = panel.getByRole('button', { name: /Way driven in 0-baseline-a\.csv/ });
  await way.click();
  await page.getByRole('option', { name: 'By turns, back first' }).click();
  await expect(rows.first()).toContainText('back, counts', { timeout: 30_000 });
  await expect(rows.nth(1)).toContainText('out, counts');
  await page.keyboard.press('Control+z');
  await expect(rows.first()).not.toContainText('back, counts', { timeout: 30_000 });
});
