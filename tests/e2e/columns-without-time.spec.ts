import { expect, test } from './support/workbench.ts';

test.use({ startsWith: 'nothing', viewport: { width: 1280, height: 720 } });

/** A minute at 20 Hz whose rows are counted and not timed, with one pull. */
const rows = Array.from({ length: 600 }, (_, i) => {
  const t = i / 20;
  const isFull = t >= 8 && t < 18;
  const rpm = 2400 + 380 * Math.max(0, Math.min(t, 18) - 8) - 250 * Math.max(0, t - 18);
  return [i, rpm.toFixed(0), isFull ? 100 : 15, (rpm * 0.022).toFixed(1)].join(',');
});
const log = `Count,Engine Speed (rpm),Pedal (%),Speed (km/h)\n${rows.join('\n')}\n`;

test('a log that counts its rows is put right under Columns by keys, and what was said of it leaves', async ({
  page,
}) => {
  await page.getByRole('button', { name: 'New session' }).click();
  await page.getByRole('textbox', { name: 'Mass as driven' }).fill('1420');
  await page.keyboard.press('Enter');
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: /Drop the log here/ }).click();
  await (await chooser).setFiles({ name: 'counted.csv', mimeType: 'text/csv', buffer: Buffer.from(log) });
  const said = page.getByRole('alert').filter({ hasText: 'None of the columns holds the time' });
  await expect(said).toContainText('set it to Time under Columns');
  await page.getByRole('tab', { name: /^Pulls/ }).click();
  await page.getByRole('button', { name: 'Columns of counted.csv' }).focus();
  await page.keyboard.press('Enter');
  const dialog = page.getByRole('dialog', { name: 'Columns of counted.csv' });
  const row = dialog.getByRole('row', { name: /^Count/ });
  await row.getByRole('button', { name: /Quantity of Count/ }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('option', { name: 'Time', exact: true }).focus();
  await page.keyboard.press('Enter');
  await row.getByRole('button', { name: /Unit of Count/ }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('option', { name: '1/20 s' }).focus();
  await page.keyboard.press('Enter');
  await dialog.getByRole('button', { name: 'Use these columns' }).focus();
  await page.keyboard.press('Enter');
  await expect(dialog).toBeHidden({ timeout: 30_000 });
  await expect(said).toBeHidden();
  await expect(page.getByRole('tab', { name: /^Pulls\s*1/ })).toBeVisible();
});
