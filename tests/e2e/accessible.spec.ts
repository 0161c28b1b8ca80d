import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright/test';
import { expect, test } from './support/workbench.ts';

async function seriousFindings(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations
    .filter((v) => v.impact === 'serious' || v.impact === 'critical')
    .map((v) => `${v.id}: ${v.nodes.map((n) => n.html.slice(0, 160)).join(' | ')}`);
}

for (const theme of ['day', 'night'] as const) {
  test.describe(`by ${theme}`, () => {
    test.use({ preferences: { theme } });

    test('bench, dialogs and menu have no serious finding', async ({ page }) => {
      await expect(page.getByRole('img')).toBeVisible();
      expect(await seriousFindings(page)).toEqual([]);
      for (const key of ['?', 'Control+k', 'u', 'a', 'e']) {
        await page.keyboard.press(key);
        await expect(page.getByRole('dialog')).toBeVisible();
        expect(await seriousFindings(page), `dialog on ${key}`).toEqual([]);
        await page.keyboard.press('Escape');
        await expect(page.getByRole('dialog')).toBeHidden();
      }
      for (const tab of [/Pulls/, /Notes/]) {
        await page.getByRole('tab', { name: tab }).click();
        expect(await seriousFindings(page), `tab ${tab}`).toEqual([]);
      }
    });
  });

  test.describe(`the start by ${theme}`, () => {
    test.use({ startsWith: 'nothing', preferences: { theme } });

    test('start screen and new session have no serious finding', async ({ page }) => {
      await expect(page.getByRole('button', { name: 'New session' })).toBeVisible();
      expect(await seriousFindings(page)).toEqual([]);
      await page.getByRole('button', { name: 'New session' }).click();
      await expect(page.getByRole('dialog')).toBeVisible();
      expect(await seriousFindings(page)).toEqual([]);
    });
  });
}
