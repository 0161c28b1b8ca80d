import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Session } from '../../core/session/index.ts';
import { seriousFindings } from './support/serious-findings.ts';
import { expect, test } from './support/workbench.ts';

const sessionIn = (folder: string) =>
  JSON.parse(readFileSync(join(folder, 'session.json'), 'utf8')) as Session;

test('a key opens one line, Enter keeps it with entry and time, and undo takes it back', async ({
  page,
  sessionFolder,
}) => {
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await page.keyboard.press('n');
  const field = page.getByRole('textbox', { name: /^Note on entry 5 · Spark/ });
  await expect(field).toBeFocused();
  expect(await seriousFindings(page)).toEqual([]);
  await page.keyboard.type('smelled of fluid');
  await page.keyboard.press('Enter');
  await expect(field).toBeHidden();
  await expect(page.getByText(/^Noted with entry 5 · Spark/)).toBeVisible();
  const kept = () => sessionIn(sessionFolder).ledger.at(-1)?.privateNote ?? '';
  expect(kept()).toMatch(/^\d\d:\d\d smelled of fluid$/m);
  await page.keyboard.press('Shift+N');
  await expect(page.getByRole('textbox', { name: /Private note/ })).toHaveValue(/smelled of fluid$/);
  await page.keyboard.press('Control+z');
  await expect(page.getByRole('textbox', { name: /Private note/ })).not.toHaveValue(/smelled/);
  await page.keyboard.press('n');
  await page.keyboard.type('left alone');
  await page.keyboard.press('Escape');
  const question = page.getByRole('dialog', { name: /^Close without saving\?/ });
  await question.getByRole('button', { name: 'Discard it' }).click();
  await expect(field).toBeHidden();
  expect(kept()).not.toContain('left alone');
});

test('a pinned pull stays on the plot, and is read, while one steps through the entries', async ({
  page,
}) => {
  const ledger = page.getByRole('navigation', { name: 'Ledger' });
  await ledger.getByRole('button', { name: /^1 Spray/ }).click();
  await expect(page.getByRole('img', { name: /1 · after/ })).toBeVisible();
  await page.keyboard.press('p');
  const pins = page.getByRole('list', { name: 'Pinned pulls' });
  await expect(pins.getByRole('listitem')).toHaveText([/^1 · Pull \d/]);
  const lines = (plot: RegExp) =>
    page
      .getByRole('img', { name: plot })
      .locator('.scatterlayer .js-line')
      .evaluateAll((all) => all.filter((l) => getComputedStyle(l).strokeDasharray.startsWith('2px')).length);
  for (const at of [/^2 Boost/, /^3 Spark/, /^4 Lambda/]) {
    await ledger.getByRole('button', { name: at }).click();
    await expect(pins.getByRole('listitem')).toHaveCount(1);
  }
  await expect(page.getByRole('img', { name: /4 · after/ })).toBeVisible();
  await expect.poll(() => lines(/4 · after/)).toBeGreaterThan(0);
  const slider = page.getByRole('slider').first();
  await slider.focus();
  await page.keyboard.press('ArrowRight');
  await expect(pins.getByText(/kW$/)).toBeVisible();
  await page.getByRole('tab', { name: /^Pulls/ }).click();
  await page.getByRole('button', { name: 'Keep 4 · Pull 1 in view' }).click();
  await expect(pins.getByRole('listitem')).toHaveCount(2);
  expect(await seriousFindings(page)).toEqual([]);
  await pins.getByRole('button', { name: /^Let 1 · Pull \d go$/ }).click();
  await expect(pins.getByRole('listitem')).toHaveCount(1);
  await page.keyboard.press('Shift+P');
  await expect(pins).toBeHidden();
});

test('a gain on a day that nothing was driven twice asks for the earlier setting again', async ({ page }) => {
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  const ledger = page.getByRole('navigation', { name: 'Ledger' });
  // The newer entries are dropped: a gain is the last that stands.
  for (const at of [/^5 Spark/, /^4 Lambda/]) {
    await ledger.getByRole('button', { name: at }).click();
    await page.keyboard.press('d');
    await expect(page.getByRole('button', { name: /^Undo/ })).toBeEnabled();
  }
  await ledger.getByRole('button', { name: /^3 Spark/ }).click();
  const reminder = page.getByText(/Nothing was driven twice/);
  await expect(reminder).toBeVisible();
  await ledger.getByRole('button', { name: /^2 Boost/ }).click();
  await expect(reminder).toBeHidden();
  await ledger.getByRole('button', { name: /^3 Spark/ }).click();
  await page.getByRole('button', { name: /^Drive 2 Boost .* again$/ }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Add to the ledger' }).click();
  await expect(page.getByRole('heading', { name: /again waits for its pulls/i })).toBeVisible();
});
