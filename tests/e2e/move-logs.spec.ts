import type { Page } from 'playwright/test';
import { seriousFindings } from './support/serious-findings.ts';
import { expect, test } from './support/workbench.ts';

const ledger = (page: Page) => page.getByRole('navigation', { name: 'Ledger' });
const entry = (page: Page, name: RegExp) => ledger(page).getByRole('button', { name });
const logs = (page: Page) => page.getByRole('button', { name: /^Move .* to another entry$/ });

async function openPulls(page: Page, name: RegExp): Promise<void> {
  await entry(page, name).click();
  await page.getByRole('tab', { name: /Pulls/ }).click();
}

test.setTimeout(90_000);

test('a log goes to another entry by the keyboard, both are judged anew, and one undo brings it back', async ({
  page,
}) => {
  await openPulls(page, /^2 Boost/);
  // Its mark of being shown belongs to what the undo brings back.
  await expect(entry(page, /^2 Boost/)).toContainText(/after$/);
  const verdict = await entry(page, /^2 Boost/).textContent();
  const move = logs(page).last();
  const name = ((await move.getAttribute('aria-label')) ?? '').replace(/^Move (.*) to another entry$/, '$1');
  await page.getByRole('button', { name: `Columns of ${name}` }).focus();
  await page.keyboard.press('Shift+Tab');
  await expect(move).toBeFocused();
  await page.keyboard.press('Enter');
  const dialog = page.getByRole('dialog', { name: `Move ${name}` });
  await expect(dialog.getByRole('button', { name: 'Move', exact: true })).toBeDisabled();
  const target = dialog.getByRole('button', { name: new RegExp(`Entry: ${name}$`) });
  await target.focus();
  await page.keyboard.press('ArrowLeft');
  await expect(target).toContainText(/^1 /);
  expect(await seriousFindings(page)).toEqual([]);
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(dialog).toBeHidden();
  await expect(page.getByText(new RegExp(`^${name} now counts in 1 `))).toBeVisible();
  await expect(page.getByRole('row', { name: new RegExp(`Pull 5 ${name}`) })).toBeVisible();
  await expect(entry(page, /^2 Boost/)).not.toHaveText(verdict ?? '', { timeout: 30_000 });
  await page.keyboard.press('Control+z');
  await expect(entry(page, /^2 Boost/)).toHaveText(verdict ?? '', { timeout: 30_000 });
});

test('a corrected pull stays corrected in the entry that its log goes to', async ({ page }) => {
  await openPulls(page, /^2 Boost/);
  const panel = page.getByRole('tabpanel', { name: /Pulls/ });
  await panel.getByRole('button', { name: 'Leave out' }).last().click();
  const drop = page.getByRole('dialog', { name: 'Leave this pull out' });
  await drop.getByText('wheelspin').click();
  await drop.getByRole('button', { name: 'Leave out' }).click();
  await expect(panel.getByText('wheelspin')).toBeVisible({ timeout: 30_000 });
  await logs(page).last().click();
  const dialog = page.getByRole('dialog', { name: /^Move / });
  await dialog.getByRole('button', { name: / Entry: / }).click();
  await page.getByRole('option', { name: /^1 / }).click();
  await dialog.getByRole('button', { name: 'Move', exact: true }).click();
  await entry(page, /^1 /).click();
  await expect(panel.getByText('wheelspin')).toBeVisible({ timeout: 30_000 });
});

test('a log may wait in no entry, which the ledger tells, and goes into a new change from the palette', async ({
  page,
}) => {
  await openPulls(page, /^2 Boost/);
  await logs(page).last().click();
  const dialog = page.getByRole('dialog', { name: /^Move / });
  await dialog.getByRole('button', { name: / Entry: / }).click();
  await page.getByRole('option', { name: 'No entry' }).click();
  await dialog.getByRole('button', { name: 'Move', exact: true }).click();
  await expect(ledger(page).getByText('1 log counts in no entry.')).toBeVisible();
  // The row is gone with its log; the focus stays in the list.
  await expect(logs(page)).toHaveCount(4, { timeout: 30_000 });
  await expect(page.getByRole('button', { name: /Direction of the pulls in 2-boost-b/ })).toBeFocused();
  await page.keyboard.press('Control+k');
  await page.keyboard.type('Move logs');
  await page.keyboard.press('Enter');
  const all = page.getByRole('dialog', { name: 'Move logs to other entries' });
  // Those in no entry come first.
  await all
    .getByRole('button', { name: / Entry: / })
    .first()
    .click();
  await page.getByRole('option', { name: 'A new change' }).click();
  await all.getByRole('textbox', { name: /Name in the ledger/ }).fill('Cooler air');
  await all.getByRole('button', { name: 'Move', exact: true }).click();
  await expect(ledger(page).getByText('1 log counts in no entry.')).toBeHidden();
  await expect(ledger(page).getByRole('button', { name: 'Actions for Cooler air' })).toBeVisible({
    timeout: 30_000,
  });
});

test.describe('in German', () => {
  test.use({ preferences: { language: 'de' } });

  test('the key opens all logs with their entries', async ({ page }) => {
    await page.keyboard.press('m');
    const dialog = page.getByRole('dialog', { name: 'Aufzeichnungen in andere Einträge verschieben' });
    await expect(dialog.getByRole('button', { name: 'Verschieben', exact: true })).toBeDisabled();
    await page.keyboard.press('Escape');
    await expect(dialog).toBeHidden();
  });
});
