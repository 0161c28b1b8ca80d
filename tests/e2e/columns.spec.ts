import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expectFocusWalk } from './support/expect-focus-walk.ts';
import { seriousFindings } from './support/serious-findings.ts';
import { expect, test } from './support/workbench.ts';

const looseLogs = join(import.meta.dirname, '../../sample-sessions/loose-logs');

test.use({ viewport: { width: 1366, height: 768 } });

test('a column is given another meaning once, for every log alike, and one undo takes it back', async ({
  page,
}) => {
  await page
    .getByRole('navigation', { name: 'Ledger' })
    .getByRole('button', { name: /^2 Boost/ })
    .click();
  await page.getByRole('tab', { name: /Pulls/ }).click();
  await page
    .getByRole('button', { name: /^Columns of / })
    .first()
    .click();
  const dialog = page.getByRole('dialog', { name: /^Columns of / });
  const row = dialog.getByRole('row', { name: /^Short fuel trim \(%\)/ });
  await expect(row).toContainText('The header says');
  await expect(row).toContainText(/\d+\s%/);
  await dialog.getByText(/Also for \d+ other logs with the same columns/).click();
  expect(await seriousFindings(page)).toEqual([]);
  await row.getByRole('button', { name: /Quantity of Short fuel trim/ }).click();
  await page.getByRole('option', { name: 'Long fuel trim' }).click();
  await expect(row).toContainText('Set by hand.');
  await dialog.getByRole('button', { name: 'Use these columns' }).click();
  await expect(dialog).toBeHidden({ timeout: 30_000 });
  // Seen where the channels are chosen: the old meaning is gone from every log, the new one is there.
  await page.getByRole('tab', { name: 'Channels' }).click();
  const channels = page.getByRole('tabpanel', { name: 'Channels' });
  await expect(channels.getByRole('button', { name: 'Long fuel trim' })).toBeVisible();
  await expect(channels.getByRole('button', { name: 'Short fuel trim' })).toBeHidden();
  await page.keyboard.press('Control+z');
  await expect(channels.getByRole('button', { name: 'Short fuel trim' })).toBeVisible({ timeout: 30_000 });
});

test('a channel by formula is checked as it is typed, kept, and can be plotted', async ({ page }) => {
  await page
    .getByRole('navigation', { name: 'Ledger' })
    .getByRole('button', { name: /^2 Boost/ })
    .click();
  await page.getByRole('tab', { name: 'Channels' }).click();
  const channels = page.getByRole('tabpanel', { name: 'Channels' });
  await channels.getByRole('button', { name: 'Derived channels' }).click();
  const dialog = page.getByRole('dialog', { name: 'Derived channels' });
  await dialog.getByRole('button', { name: 'Pressure ratio', exact: true }).click();
  // The invented logs hold manifold pressure, not boost: the sentence says what is missing.
  await expect(dialog.getByText('This log has nothing named “boost”.')).toBeVisible();
  const formula = dialog.getByRole('textbox', { name: 'Formula' });
  await formula.fill('manifoldPressure / 100');
  await expect(dialog.getByText(/The formula gives “Pressure”/)).toBeVisible();
  await expect(dialog.getByRole('button', { name: 'Use these channels' })).toBeDisabled();
  await formula.fill('manifoldPressure / (100 kPa)');
  await expect(dialog.getByText(/^Works: 0\.\d+ to 2\.\d+/)).toBeVisible();
  expect(await seriousFindings(page)).toEqual([]);
  await dialog.getByRole('button', { name: 'Use these channels' }).click();
  await expect(dialog).toBeHidden({ timeout: 30_000 });
  await channels.getByRole('button', { name: 'Pressure ratio' }).click();
  await expect(channels.getByRole('img', { name: /Pressure ratio/ })).toBeVisible();
});

test('a formula names columns with spaces and umlauts, and other channels by formula, by their short names', async ({
  page,
}) => {
  await page
    .getByRole('navigation', { name: 'Ledger' })
    .getByRole('button', { name: /^2 Boost/ })
    .click();
  await page.getByRole('tab', { name: 'Channels' }).click();
  await page.getByRole('button', { name: 'Derived channels' }).click();
  const dialog = page.getByRole('dialog', { name: 'Derived channels' });
  await dialog.getByRole('button', { name: 'Add a channel' }).click();
  await dialog.getByRole('textbox', { name: 'Name' }).fill('Luft "über" 1');
  await dialog.getByRole('textbox', { name: 'Formula' }).fill('lambda - 0.1');
  await dialog.getByRole('button', { name: 'Add a channel' }).click();
  await dialog.getByRole('textbox', { name: 'Name' }).last().fill('Twice');
  await dialog.getByText('A formula can name').click();
  await expect(dialog.getByRole('listitem').filter({ hasText: 'Luft_ueber_1 Luft "über" 1' })).toBeVisible();
  await dialog.getByRole('textbox', { name: 'Formula' }).last().fill('Luft_ueber_1 * 2');
  await expect(dialog.getByText(/^Works: 1\.\d+/)).toBeVisible();
  // Called otherwise, it is followed.
  await dialog.getByRole('textbox', { name: 'Name' }).first().fill('Rest');
  await expect(dialog.getByText(/^Works: 1\.\d+/)).toBeVisible();
  await dialog.getByRole('button', { name: 'Use these channels' }).click();
  await expect(dialog).toBeHidden({ timeout: 30_000 });
  const channels = page.getByRole('tabpanel', { name: 'Channels' });
  await channels.getByRole('button', { name: 'Twice' }).click();
  await expect(channels.getByRole('img', { name: /Twice/ })).toBeVisible();
});

test.describe('with logs of one’s own', () => {
  test.use({ startsWith: 'nothing' });

  test('a column corrected once is right at once in the next log with the same columns, until it is forgotten', async ({
    page,
  }) => {
    const choose = async (name: string, button: RegExp) => {
      const chooser = page.waitForEvent('filechooser');
      await page.getByRole('button', { name: button }).click();
      await (await chooser).setFiles(join(looseLogs, name));
    };
    await page.getByRole('button', { name: 'New session' }).click();
    await page.getByRole('textbox', { name: 'Mass as driven' }).fill('1420');
    await page.getByRole('button', { name: 'Create' }).click();
    await choose('before-1.00-bar.csv', /Drop the log here/);
    await page.getByRole('tab', { name: /Pulls/ }).click();
    await page.getByRole('button', { name: /^Columns of before/ }).click();
    const first = page.getByRole('dialog', { name: /^Columns of before/ });
    await first.getByRole('button', { name: /Quantity of EGT/ }).click();
    await page.getByRole('option', { name: 'Oil temperature' }).click();
    await expect(first.getByRole('checkbox', { name: /logs that come later/ })).toBeChecked();
    await first.getByRole('button', { name: 'Use these columns' }).click();
    await expect(first).toBeHidden({ timeout: 30_000 });

    const transfer = await page.evaluateHandle(
      (text) => {
        const data = new DataTransfer();
        data.items.add(new File([text], 'after-1.10-bar.csv'));
        return data;
      },
      readFileSync(join(looseLogs, 'after-1.10-bar.csv'), 'utf8'),
    );
    await page.dispatchEvent('body', 'drop', { dataTransfer: transfer });
    await page
      .getByRole('dialog', { name: 'Where do these logs belong?' })
      .getByRole('button', { name: 'Import' })
      .click();
    await page.getByRole('button', { name: /^Columns of after/ }).click({ timeout: 30_000 });
    const second = page.getByRole('dialog', { name: /^Columns of after/ });
    const row = second.getByRole('row', { name: /^EGT/ });
    await expect(row).toContainText('Oil temperature');
    await expect(row).toContainText('As set by hand for an earlier log with the same columns.');
    await expect(second.getByText('Kept for logs with these columns: EGT.')).toBeVisible();
    await second.getByRole('button', { name: 'Forget' }).click();
    await expect(second.getByText(/Kept for logs with these columns/)).toBeHidden();
  });

  test('of a log with 300 columns the rows in sight are drawn, each with its first values', async ({
    page,
  }) => {
    const more = Array.from({ length: 296 }, (_, k) => `Channel ${k + 1}`);
    const rows = Array.from({ length: 400 }, (_, i) => {
      const isPull = i >= 100 && i < 300;
      const rpm = isPull ? 2500 + 20 * (i - 100) : 2500;
      const cells = [(i / 20).toFixed(2), rpm, isPull ? 100 : 15, (rpm * 0.022).toFixed(2)];
      return [...cells, ...more.map((_, k) => k + 1)].join(',');
    });
    const head = ['Time (s)', 'RPM', 'Pedal (%)', 'Speed (km/h)', ...more].join(',');
    await page.getByRole('button', { name: 'New session' }).click();
    await page.getByRole('textbox', { name: 'Mass as driven' }).fill('1420');
    await page.getByRole('button', { name: 'Create' }).click();
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: /Drop the log here/ }).click();
    await (await chooser).setFiles({
      name: 'wide.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from([head, ...rows].join('\n')),
    });
    await page.getByRole('tab', { name: /Pulls/ }).click();
    await page.getByRole('button', { name: /^Columns of wide/ }).click();
    const dialog = page.getByRole('dialog', { name: /^Columns of wide/ });
    const speed = dialog.getByRole('row', { name: /^Speed/ });
    await expect(speed).toContainText('55 · 55 · 56 km/h');
    await speed.getByRole('button', { name: /Unit of Speed/ }).click();
    await page.getByRole('option', { name: 'mph' }).click();
    // 55 mph are 89 km/h.
    await expect(speed).toContainText('89 · 89 · 90 km/h');
    expect(await dialog.getByRole('row').count()).toBeLessThan(60);
    await dialog.getByRole('row', { name: /^RPM/ }).focus();
    await page.keyboard.press('End');
    await expect(dialog.getByRole('row', { name: /^Channel 296/ })).toContainText('296 · 296 · 296');
    expect(await seriousFindings(page)).toEqual([]);
  });
});

for (const theme of ['day', 'night'] as const) {
  test.describe(`by keys alone, by ${theme}`, () => {
    test.use({ preferences: { theme } });

    test('a channel by formula is added, checked, kept and removed, and the focus never falls away', async ({
      page,
    }) => {
      await page.getByRole('tab', { name: 'Channels' }).focus();
      await page.keyboard.press('Enter');
      const open = page
        .getByRole('tabpanel', { name: 'Channels' })
        .getByRole('button', { name: 'Derived channels' });
      await open.focus();
      await page.keyboard.press('Enter');
      const dialog = page.getByRole('dialog', { name: 'Derived channels' });
      await expect(dialog).toBeFocused();
      const add = dialog.getByRole('button', { name: 'Add a channel' });
      await expectFocusWalk(page, dialog.getByRole('button', { name: 'Close' }), 30);
      await add.focus();
      await page.keyboard.press('Enter');
      const names = dialog.getByRole('textbox', { name: 'Name' });
      await expect(names).toBeFocused();
      await page.keyboard.type('Half');
      await page.keyboard.press('Tab');
      await page.keyboard.type('lambda / 2');
      await expect(dialog.getByText(/^Works: /)).toBeVisible();
      // An example that is taken grows grey with the focus on it.
      await dialog.getByRole('button', { name: 'Mixture, smoothed' }).focus();
      await page.keyboard.press('Enter');
      await expect(names.nth(1)).toBeFocused();
      await dialog.getByRole('button', { name: 'Remove Mixture, smoothed' }).focus();
      await page.keyboard.press('Enter');
      await expect(names).toBeFocused();
      await expect(names).toHaveValue('Half');
      await page.keyboard.press('Enter');
      await expect(dialog).toBeHidden({ timeout: 30_000 });
      await expect(open).toBeFocused();
      await page.keyboard.press('Enter');
      await expect(names).toBeFocused();
      await dialog.getByRole('button', { name: 'Remove Half' }).focus();
      await page.keyboard.press('Enter');
      await expect(add).toBeFocused();
      // It is not kept yet: the first Escape asks, the second goes back to where it was pressed.
      await page.keyboard.press('Escape');
      const question = page.getByRole('dialog', { name: /^Close without saving/ });
      await expect(question.getByRole('button', { name: 'Go on entering' })).toBeFocused();
      expect(await seriousFindings(page)).toEqual([]);
      await page.keyboard.press('Escape');
      await expect(question).toBeHidden();
      await expect(add).toBeFocused();
      await page.keyboard.press('Escape');
      await expectFocusWalk(page, question.getByRole('button', { name: 'Discard it' }), 3);
      await page.keyboard.press('Enter');
      await expect(page.getByRole('dialog')).toBeHidden();
      await expect(open).toBeFocused();
    });

    test('every column of a log is reached and one corrected, and the focus returns to the log', async ({
      page,
    }) => {
      await page.getByRole('tab', { name: /Pulls/ }).focus();
      await page.keyboard.press('Enter');
      const open = page.getByRole('button', { name: /^Columns of / }).first();
      await open.focus();
      await page.keyboard.press('Enter');
      const dialog = page.getByRole('dialog', { name: /^Columns of / });
      await expect(dialog).toBeFocused();
      const trim = dialog.getByRole('button', { name: /Quantity of Short fuel trim/ });
      await expect(trim).toBeVisible();
      await expectFocusWalk(page, dialog.getByRole('button', { name: 'Close' }), 80);
      await trim.focus();
      await page.keyboard.press('ArrowDown');
      await expect(page.getByRole('listbox')).toHaveCount(1);
      await page.keyboard.type('long');
      await expect(page.getByRole('option', { name: 'Long fuel trim' })).toBeFocused();
      // Escape leaves the list, not the dialog.
      await page.keyboard.press('Escape');
      await expect(trim).toBeFocused();
      await page.keyboard.press('Enter');
      await page.keyboard.type('long');
      await page.keyboard.press('Enter');
      await expect(trim).toBeFocused();
      await expect(trim).toContainText('Long fuel trim');
      await dialog.getByRole('button', { name: 'Use these columns' }).focus();
      await page.keyboard.press('Enter');
      await expect(dialog).toBeHidden({ timeout: 30_000 });
      await expect(open).toBeFocused();
    });
  });
}
