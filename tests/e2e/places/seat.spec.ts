import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { conditionsOf } from '../support/conditions.ts';
import { expectInOrder, expectToFit } from '../support/in-order.ts';
import { expect, test } from '../support/workbench.ts';

const looseLogs = join(import.meta.dirname, '../../../sample-sessions/loose-logs');
const before = readFileSync(join(looseLogs, 'before-1.00-bar.csv'), 'utf8');
const after = readFileSync(join(looseLogs, 'after-1.10-bar.csv'), 'utf8');

let logger: string;
test.beforeEach(() => {
  logger = mkdtempSync(join(tmpdir(), 'onechange-logger-'));
});
test.afterEach(() => rmSync(logger, { recursive: true, force: true }));

for (const { name, isMetric, options } of conditionsOf('seat')) {
  test.describe(name, () => {
    test.use(options);

    test('on the passenger seat: a folder is watched, a log arrives, a pull is marked and unmarked', async ({
      page,
    }) => {
      const ride = page.getByRole('main', { name: 'Ride' });

      await test.step('the baseline comes in by itself', async () => {
        await page.getByRole('button', { name: 'New session' }).click();
        await page.getByRole('textbox', { name: 'Mass as driven' }).fill(isMetric ? '1420' : '3131');
        await page.getByRole('button', { name: 'Create' }).click();
        await expect(page.getByRole('dialog')).toBeHidden();
        await expect(page.getByRole('heading', { name: 'The baseline waits for its pulls.' })).toBeVisible();
        await page.keyboard.press('f');
        const dialog = page.getByRole('dialog', { name: 'Watch a logger’s folder' });
        await dialog.getByRole('textbox').fill(logger);
        await page.keyboard.press('Enter');
        await expect(dialog).toBeHidden();
        writeFileSync(join(logger, 'one.csv'), before);
        await expect(page.getByRole('navigation', { name: 'Ledger' })).toContainText(/Baseline.*\d pulls/, {
          timeout: 60_000,
        });
        await expectToFit(page, 'bench that watches');
      });

      await test.step('a change is declared, and the passenger looks on', async () => {
        await page.keyboard.press('a');
        const dialog = page.getByRole('dialog', { name: 'What was changed?' });
        await dialog.getByRole('textbox', { name: 'From' }).fill(isMetric ? '1.00' : '14.5');
        await dialog.getByRole('textbox', { name: 'To' }).fill(isMetric ? '1.10' : '16.0');
        await dialog.getByRole('button', { name: 'Add to the ledger' }).click();
        await expect(dialog).toBeHidden();
        await page.keyboard.press('4');
        await expect(ride.getByRole('heading', { level: 1 })).toHaveText(/Baseline/);
        await expect(ride.getByText('The driver never works this.')).toBeVisible();
        await expectToFit(page, 'ride before the log');
      });

      await test.step('the log arrives and is told', async () => {
        writeFileSync(join(logger, 'two.csv'), after);
        await expect(ride.getByRole('heading', { level: 1 })).toHaveText(/Boost/, { timeout: 60_000 });
        await expect(ride.getByText(/^give or take \d+\.\d$/)).toBeVisible();
        await expect(ride.getByText(/^\d+( of \d+)? pulls?$/)).toBeVisible();
        await expectInOrder(page, 'ride');
      });

      await test.step('marked bad, taken back, left', async () => {
        await expect(ride.getByText('The last pull counts')).toBeVisible();
        await page.keyboard.press('Space');
        await expect(ride.getByText('Last pull marked bad')).toBeVisible();
        await expectToFit(page, 'ride with a mark');
        const isKept = page.waitForResponse((answer) =>
          (answer.request().postData() ?? '').includes('"restore"'),
        );
        await page.keyboard.press('Backspace');
        await expect(ride.getByText('The mark is gone')).toBeVisible();
        await isKept;
        await page.keyboard.press('Escape');
        await expect(ride).toBeHidden();
        await expect(page.getByRole('heading', { level: 1 })).toHaveText(
          isMetric ? /gained \d+\.\d\skW/ : /gained \d+\.\d\shp/,
        );
        await expectInOrder(page, 'bench after the ride');
      });
    });
  });
}
