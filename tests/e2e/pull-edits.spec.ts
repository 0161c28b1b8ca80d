import { seriousFindings } from './support/serious-findings.ts';
import { expect, test } from './support/workbench.ts';

test('a pull is trimmed, left out and taken back in, each with its reason, and undo brings its ends back', async ({
  page,
}) => {
  await page
    .getByRole('navigation', { name: 'Ledger' })
    .getByRole('button', { name: /^2 Boost/ })
    .click();
  await page.getByRole('tab', { name: /Pulls/ }).click();
  const row = page
    .getByRole('tabpanel', { name: /Pulls/ })
    .getByRole('row', { name: /\bPull 1 / })
    .last();
  const start = async () =>
    Number.parseFloat(((await row.getByRole('cell').first().textContent()) ?? '').replace(',', ''));
  const before = await start();
  await row.getByRole('button', { name: 'Trim pull 1' }).click();
  const dialog = page.getByRole('dialog', { name: 'Trim this pull' });
  const from = dialog.getByRole('textbox', { name: 'Starts at' });
  await from.fill('99999');
  await expect(dialog.getByText(/The end has to come after the start/)).toBeVisible();
  await expect(dialog.getByRole('button', { name: 'Trim', exact: true })).toBeDisabled();
  // Wider than it was found is told before it is done.
  const wider = dialog.getByText(/wider than the pull as it stands/);
  await expect(dialog.getByText('It takes a reason, which stays with the pull.')).toBeVisible();
  await from.fill(String(before - 2));
  // It stands under the end that went out, and is read with it.
  const to = dialog.getByRole('textbox', { name: 'Ends at' });
  await expect(wider).toBeVisible();
  await expect(from).toHaveAccessibleDescription(/wider than the pull/);
  await expect(to).not.toHaveAccessibleDescription(/wider than the pull/);
  const end = await to.inputValue();
  await to.fill(String(Number(end) + 2));
  await from.fill(String(before + 0.5));
  await expect(to).toHaveAccessibleDescription(/wider than the pull/);
  await expect(from).not.toHaveAccessibleDescription(/wider than the pull/);
  await to.fill(end);
  await from.fill(String(before + 1));
  await expect(wider).toBeHidden();
  await dialog.getByRole('textbox', { name: 'Reason' }).fill('bump');
  await dialog.getByRole('button', { name: 'Trim', exact: true }).click();
  await expect(dialog).toBeHidden({ timeout: 30_000 });
  await expect(row).toContainText('Trimmed: bump.');
  expect(Math.abs((await start()) - before - 1)).toBeLessThanOrEqual(0.11);
  await row.getByRole('button', { name: 'Leave out' }).click();
  const drop = page.getByRole('dialog', { name: 'Leave this pull out' });
  await drop.getByText('wheelspin').click();
  // A reason that was chosen by keys is confirmed like one that was typed.
  await page.keyboard.press('Enter');
  await expect(row).toContainText('wheelspin');
  await expect(row.getByRole('button', { name: 'Take back in' })).toBeFocused();
  await row.getByRole('button', { name: 'Take back in' }).click();
  const restore = page.getByRole('dialog', { name: 'Take this pull back in' });
  await expect(restore.getByText(/It was left out: wheelspin/)).toBeVisible();
  await restore.getByRole('textbox').fill('the film shows none');
  await page.keyboard.press('Enter');
  await expect(row.getByRole('button', { name: 'Leave out' })).toBeVisible({ timeout: 30_000 });
  await expect(row).toContainText('Was left out: wheelspin. Taken back in: the film shows none.');
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect(row).not.toContainText('Trimmed', { timeout: 30_000 });
});

test('a pull is trimmed on its curve, left out and taken back in by keys alone, and the focus stays at it', async ({
  page,
}) => {
  await page.keyboard.press('k');
  await page.getByRole('tab', { name: /Pulls/ }).focus();
  await page.keyboard.press('Enter');
  const trimming = page.getByRole('button', { name: 'Trim pull 1' }).last();
  await trimming.focus();
  await page.keyboard.press('Enter');
  const dialog = page.getByRole('dialog', { name: 'Trim this pull' });
  const start = dialog.getByRole('slider', { name: 'Start on the curve' });
  await expect(start).toHaveAttribute('aria-valuetext', /^\d+\.\d\d\ss: [\d,]+\srpm$/);
  await expect(dialog.getByText('Engine speed over time')).toBeVisible();
  const from = dialog.getByRole('textbox', { name: 'Starts at' });
  const value = async () => Number(await from.inputValue());
  const before = await value();
  await expect(from).toBeFocused();
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('Shift+Tab');
  await expect(start).toBeFocused();
  await page.keyboard.press('ArrowRight');
  const moved = await value();
  expect(moved).toBeGreaterThan(before);
  expect(moved - before).toBeLessThan(0.11);
  await page.keyboard.press('ArrowLeft');
  expect(await value()).toBeCloseTo(before, 3);
  await page.keyboard.press('Shift+ArrowRight');
  expect(await value()).toBeCloseTo(before + 0.1, 3);
  await page.keyboard.press('Tab');
  const end = dialog.getByRole('slider', { name: 'End on the curve' });
  await expect(end).toBeFocused();
  const to = dialog.getByRole('textbox', { name: 'Ends at' });
  const last = Number(await to.inputValue());
  await page.keyboard.press('Shift+ArrowLeft');
  expect(Number(await to.inputValue())).toBeCloseTo(last - 0.1, 3);
  await page.keyboard.press('Tab');
  await expect(from).toBeFocused();
  expect(await seriousFindings(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();
  await expect(trimming).toBeFocused();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  const drop = page.getByRole('dialog', { name: 'Leave this pull out' });
  await drop.getByRole('textbox').focus();
  await page.keyboard.type('gust');
  await page.keyboard.press('Enter');
  await expect(drop).toBeHidden();
  const back = page.getByRole('button', { name: 'Take back in' });
  await expect(back).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog', { name: 'Take this pull back in' })).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog')).toBeHidden();
  await expect(page.getByRole('button', { name: 'Leave out' }).last()).toBeVisible();
  await expect(back).toHaveCount(0);
});
