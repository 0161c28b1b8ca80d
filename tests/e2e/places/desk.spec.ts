import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { conditionsOf } from '../support/conditions.ts';
import { expectInOrder, expectToFit } from '../support/in-order.ts';
import { expect, test } from '../support/workbench.ts';

const looseLogs = join(import.meta.dirname, '../../../sample-sessions/loose-logs');
const logs = ['before-1.00-bar.csv', 'after-1.10-bar.csv'].map((name) => join(looseLogs, name));

for (const { name, isMetric, options } of conditionsOf('desk')) {
  test.describe(name, () => {
    test.use(options);

    test('at a desk: two logs, a verdict, the setup, a plan, the handover in a file', async ({ page }) => {
      await test.step('two logs of one’s own become a verdict', async () => {
        await expectToFit(page, 'start');
        const chooser = page.waitForEvent('filechooser');
        await page.getByRole('button', { name: /Drop two logs here, or choose files/ }).click();
        await (await chooser).setFiles(logs);
        await page.getByRole('textbox', { name: 'Mass as driven' }).fill(isMetric ? '1420' : '3131');
        await expectToFit(page, 'new session');
        await page.getByRole('button', { name: 'Create' }).click();
        await expect(page.getByRole('heading', { level: 1 })).toHaveText(
          isMetric ? /^Boost gained \d+\.\d\skW/ : /^Boost gained \d+\.\d\shp/,
          { timeout: 60_000 },
        );
        await expect(page.getByRole('img', { name: /0 · before.*1 · after/ })).toBeVisible();
        await expectInOrder(page, 'bench');
      });

      await test.step('the least that a plan needs is typed', async () => {
        await page.getByRole('link', { name: 'Setup' }).click();
        const follows = page.getByRole('complementary', { name: 'What follows' });
        await page.getByRole('button', { name: 'Engine', exact: true }).click();
        await page.getByRole('textbox', { name: 'Target power at the crank' }).fill(isMetric ? '150' : '201');
        await page.getByRole('textbox', { name: 'Peak boost', exact: true }).fill(isMetric ? '1.1' : '16');
        await expectToFit(page, 'setup of the engine');
        await page.getByRole('button', { name: 'Fluid system', exact: true }).click();
        await page.getByRole('textbox', { name: 'Methanol', exact: true }).fill('50');
        await page.getByRole('textbox', { name: 'Ethanol', exact: true }).fill('0');
        await page.getByRole('textbox', { name: 'Pressure, outlet shut' }).fill(isMetric ? '12' : '174');
        await page.getByRole('textbox', { name: 'Flow, outlet open' }).fill('1500');
        await page.getByRole('button', { name: 'Add a nozzle' }).click();
        await expect(follows.getByRole('button', { name: /Where from: Delivered at peak/ })).toBeVisible();
        await expectInOrder(page, 'setup of the fluid system');
      });

      await test.step('the plan says where to start and where to be full', async () => {
        await page.getByRole('link', { name: 'Plan' }).click();
        await expect(page.getByRole('heading', { level: 1 })).toHaveText(
          isMetric ? /^Start at \d\.\d\d\sbar\sg, full at \d/ : /^Start at \d+\.\d\spsi\sg, full at \d/,
        );
        await expect(page.getByRole('slider', { name: 'Start point' })).toBeAttached();
        await expectInOrder(page, 'plan');
      });

      await test.step('the handover is saved', async () => {
        await page.getByRole('link', { name: 'Handover' }).click();
        await page.getByRole('textbox', { name: 'Customer' }).fill('A. Example');
        await page.keyboard.press('Tab');
        const sheet = page.getByTitle('Preview of the summary');
        await expect(sheet).toHaveAttribute('srcdoc', /A\. Example/);
        const download = page.waitForEvent('download');
        await page.getByRole('button', { name: 'Save as HTML' }).click();
        const saved = readFileSync(await (await download).path(), 'utf8');
        expect(saved).toContain('A. Example');
        expect(saved).toMatch(isMetric ? /\d\skW/ : /\d\shp/);
        await expectInOrder(page, 'handover');
      });
    });
  });
}
