import { join } from 'node:path';
import { conditionsOf } from '../support/conditions.ts';
import { expectInOrder, expectToFit } from '../support/in-order.ts';
import { expect, test } from '../support/workbench.ts';

// Of the same change on another day: its spark is not that of the sample.
const otherSpark = join(import.meta.dirname, '../../../sample-sessions/loose-logs/after-1.10-bar.csv');

for (const { name, options } of conditionsOf('cell')) {
  test.describe(name, () => {
    test.use(options);

    test('in a dyno cell: entries, pins, the reading line, a note, a log that does not belong', async ({
      page,
    }) => {
      const headline = page.getByRole('heading', { level: 1 });
      const ledger = page.getByRole('navigation', { name: 'Ledger' });
      const against = page.getByText(/^\d+ pulls? against \d+/);

      await test.step('entries are stepped through by keys', async () => {
        await page.getByRole('button', { name: 'Open the sample' }).click();
        await expect(ledger.locator('[aria-current="true"]')).toBeVisible();
        await expect(ledger).toHaveAttribute('aria-busy', 'false');
        const newest = await ledger.locator('[aria-current="true"]').textContent();
        await page.keyboard.press('k');
        await expect(ledger.locator('[aria-current="true"]')).not.toHaveText(newest ?? '');
        await page.keyboard.press('j');
        await expect(ledger.locator('[aria-current="true"]')).toHaveText(newest ?? '');
        await ledger.getByRole('button', { name: /^2 Boost/ }).click();
        await expect(headline).toHaveText(/^Boost from .* gained \d+\.\d\s(kW|hp)/);
        await expect(against).toBeVisible();
        await expectToFit(page, 'bench');
      });

      await test.step('pulls are pinned, channels chosen, one line reads them all', async () => {
        await page.getByRole('tab', { name: 'Channels' }).click();
        const panel = page.getByRole('tabpanel', { name: 'Channels' });
        await panel.getByRole('button', { name: 'Keep 1 · Pull 1 in view' }).click();
        await panel.getByRole('button', { name: 'Fluid flow' }).click();
        await expect(panel.getByRole('img', { name: /Fluid flow/ })).toBeVisible();
        const line = panel.getByRole('slider', { name: /^Engine speed, rpm/ });
        await line.focus();
        await page.keyboard.press('ArrowRight');
        await expect(line).toHaveAttribute('aria-valuetext', /rpm/);
        // Each channel's unit stands beside its name, over what it reads before and after.
        const values = panel.getByLabel(/^At /).locator('div');
        await expect(
          values.filter({ hasText: /^Mixture (λ.*before 0\.8\d|AFR.*before 1[12]\.\d)/ }),
        ).toBeVisible();
        await expectInOrder(page, 'channels');
        await ledger.getByRole('button', { name: /^3 / }).click();
        await expect(panel.getByRole('button', { name: 'Keep 1 · Pull 1 in view' })).toHaveAttribute(
          'aria-pressed',
          'true',
        );
        await ledger.getByRole('button', { name: /^2 Boost/ }).click();
      });

      await test.step('a note is written', async () => {
        await page.keyboard.press('n');
        const note = page.getByRole('textbox', { name: /^Note on entry 2 · Boost/ });
        await note.fill('second fan on');
        await page.keyboard.press('Enter');
        await expect(note).toBeHidden();
        await expect(page.getByRole('button', { name: /^Undo/ })).toBeEnabled();
        await page.getByRole('tab', { name: /Pulls/ }).click();
        await expectToFit(page, 'pulls');
      });

      await test.step('a log with another spark is caught by the verdict', async () => {
        const chooser = page.waitForEvent('filechooser');
        // The browser hears that the test takes the system's dialog before the key asks for one.
        await page.evaluate(() => document.readyState);
        await page.keyboard.press('i');
        await (await chooser).setFiles(otherSpark);
        const dialog = page.getByRole('dialog');
        await expect(dialog).toBeVisible();
        await expectToFit(page, 'where a log belongs');
        await dialog.getByRole('button', { name: 'Import', exact: true }).click();
        await expect(dialog).toBeHidden();
        await expect(headline).toHaveText('Boost can’t be judged.', { timeout: 60_000 });
        await expect(page.getByText(/^Spark advance moved by −2\.0°/).first()).toBeVisible();
        await page.getByRole('tab', { name: 'Why' }).click();
        await expectInOrder(page, 'bench with one more log');
      });
    });
  });
}
