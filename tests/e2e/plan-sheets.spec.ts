import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright/test';
import { holdAnswers } from './support/hold-answers.ts';
import { seriousFindings } from './support/serious-findings.ts';
import { expect, test } from './support/workbench.ts';

test.use({ viewport: { width: 1366, height: 768 } });

const openSheet = async (page: Page, name: string) => {
  await expect(page.getByRole('main')).toBeVisible();
  const sheets = page.getByRole('navigation', { name: 'Plan' });
  // The key is heard only once the workbench has taken its place.
  await expect(async () => {
    await page.keyboard.press('2');
    await expect(sheets).toBeVisible({ timeout: 1_000 });
  }).toPass();
  await sheets.getByRole('button', { name }).click();
};

for (const theme of ['day', 'night'] as const) {
  test.describe(`by ${theme}`, () => {
    test.use({ preferences: { theme } });

    test('ladder, mixture and heat have no serious finding', async ({ page }) => {
      for (const sheet of ['Ladder', 'Mixture', 'Heat']) {
        await openSheet(page, sheet);
        await expect(page.getByRole('main').getByRole('heading', { level: 1 })).toBeVisible();
        await expect(page.getByRole('main').getByRole('table').first()).toBeVisible();
        expect(await seriousFindings(page), sheet).toEqual([]);
      }
    });
  });
}

test('what is open in the ledger comes before the next step of the ladder', async ({ page }) => {
  await openSheet(page, 'Ladder');
  await expect(page.getByRole('heading', { level: 1, name: /^Drive it again/ })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Take this step' })).toBeHidden();
  await expect(page.getByRole('button', { name: 'Open the bench' })).toBeVisible();
});

test('a dropped change is said to be dropped at once, and a second press drops no other', async ({
  page,
  sessionFolder,
}) => {
  const dropped = () =>
    JSON.parse(readFileSync(join(sessionFolder, 'session.json'), 'utf8')).ledger.filter(
      (e: { state: string }) => e.state === 'dropped',
    ).length;
  const before = dropped();
  const lines = page.getByRole('navigation', { name: 'Ledger' }).getByText(/\bdropped\b/);
  const linesBefore = await lines.count();
  const letGo = await holdAnswers(page, 'session.edit');
  await page.getByRole('button', { name: 'Drop the change' }).click();
  const said = page.getByRole('button', { name: /^Dropped/ });
  await expect(said).toBeFocused();
  await expect(lines).toHaveCount(linesBefore + 1);
  await page.keyboard.press('Enter');
  await expect(said).toBeVisible();
  expect(dropped()).toBe(before);
  letGo();
  await expect(said).toBeHidden();
  await expect.poll(dropped).toBe(before + 1);
});

test('a step of the ladder is taken into the ledger, and undone', async ({ page }) => {
  await page.getByRole('button', { name: 'Drop the change' }).click();
  await openSheet(page, 'Ladder');
  const sheet = page.getByRole('complementary', { name: 'Ladder' });
  await sheet.getByRole('button', { name: 'Take this step' }).click();
  await expect(page.getByText(/^In the ledger: /)).toBeVisible();
  await expect(page.getByRole('heading', { level: 1, name: /^Drive it: 4 pulls/ })).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).first().click();
  await expect(sheet.getByRole('button', { name: 'Take this step' })).toBeVisible();
});

test('another step shows its own stop rules and waits for its turn; a dyno asks other pulls', async ({
  page,
}) => {
  await page.getByRole('button', { name: 'Drop the change' }).click();
  await openSheet(page, 'Ladder');
  const steps = page.getByRole('table').first();
  await steps
    .getByRole('button', { name: /^Spark \+/ })
    .first()
    .click();
  await expect(page.getByRole('heading', { name: /^Gates of step \d+: Spark/ })).toBeVisible();
  await expect(page.getByText(/Too much spark destroys an engine/)).toBeVisible();
  await expect(page.getByText(/^One change at a time/)).toBeVisible();
  await expect(page.getByText(/4 pulls, half of them each way/)).toBeVisible();
  await page.getByRole('radio', { name: 'Dyno' }).check({ force: true });
  await expect(page.getByText(/^Each step: 3 pulls,/)).toBeVisible();
});

test('the mixture says what the loop does, and reads the fluid back from the logged trim', async ({
  page,
}) => {
  await openSheet(page, 'Mixture');
  await expect(page.getByRole('heading', { level: 1, name: /leave the fuelling table alone/ })).toBeVisible();
  await expect(page.getByText('Fluid that arrived')).toBeVisible();
  await page.getByRole('button', { name: /Where from: Air taken by alcohol at peak/ }).click();
  await expect(page.getByRole('dialog')).toBeVisible();
});

test('heat says how warm the charge is with and without the spray, and where that comes from', async ({
  page,
}) => {
  await openSheet(page, 'Heat');
  await expect(page.getByRole('heading', { level: 1, name: /with the spray, .* without/ })).toBeVisible();
  await page.getByRole('button', { name: /Where from: Evaporated at the port/ }).click();
  await expect(page.getByRole('dialog')).toBeVisible();
});
