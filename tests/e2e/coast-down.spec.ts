import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright/test';
import { rolledLog } from '../support/rolled-log.ts';
import { holdAnswers } from './support/hold-answers.ts';
import { seriousFindings } from './support/serious-findings.ts';
import { expect, test } from './support/workbench.ts';

const folder = mkdtempSync(join(tmpdir(), 'onechange-rolls-'));
test.afterAll(() => rmSync(folder, { recursive: true, force: true }));

const part = (page: Page) => page.getByRole('region', { name: 'From rolls in the logs' });
const figure = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });

async function importRolls(page: Page, name = 'rolls.csv', text = rolledLog()) {
  const path = join(folder, name);
  writeFileSync(path, text);
  await page.keyboard.press('Shift+I');
  await page.getByRole('dialog').getByRole('textbox').fill(path);
  await page.getByRole('button', { name: 'Import', exact: true }).click();
  await page.getByRole('button', { name: new RegExp(`^${name}|Entry: ${name}`) }).click();
  await page.getByRole('option', { name: /Decide later/ }).click();
  await page.getByRole('button', { name: 'Import', exact: true }).click();
}

test('without a roll in any log it is said what to record', async ({ page }) => {
  await page.getByRole('link', { name: 'Setup' }).click();
  await expect(part(page).getByText('No log of this session holds a roll in neutral.')).toBeVisible();
  await expect(part(page).getByText(/select neutral, foot off, no brake/)).toBeVisible();
  await expect(part(page).getByText(/closed road, as the law of your place says/)).toBeVisible();
});

test('rolls of an imported log become the road load of the car with one press, and undo takes it back', async ({
  page,
}) => {
  await importRolls(page);
  await page.getByRole('link', { name: 'Setup' }).click();
  const rolls = part(page);
  await expect(rolls.getByRole('row')).toHaveCount(3);
  await expect(rolls.getByText(/Say of each roll which way it went/)).toBeVisible();
  await rolls.getByRole('button', { name: /Which way they went/ }).click();
  await page.getByRole('option', { name: 'By turns, out first' }).click();
  await expect(rolls.getByText(/Out and back differ as on a slope of/)).toBeVisible();
  const a = rolls.getByRole('button', { name: /Where from: Coast-down A/ });
  // The sample car weighs 1461 kg with its wheels, the one that rolled 1450.
  await expect(a).toContainText(/^17\d\.\d+\s± \d/);
  await a.click();
  const panel = page.getByRole('dialog', { name: 'Where this number comes from' });
  await expect(panel).toContainText('40 CFR 1066');
  await expect(panel).toContainText('rolls.csv, 2 rolls');
  await page.keyboard.press('Escape');
  await rolls.getByRole('button', { name: 'Take into the car' }).click();
  await expect(rolls.getByText('These figures stand in the car.')).toBeVisible();
  await expect(figure(page, 'Coast-down A')).toHaveValue(/^1[67]\d/);
  await expect(figure(page, 'Coast-down, give or take')).not.toHaveValue('');
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(figure(page, 'Coast-down A')).toHaveValue('');
  await expect(rolls.getByRole('button', { name: 'Take into the car' })).toBeVisible();
});

test('each roll that was braked is told once, also after the ways are changed', async ({ page }) => {
  await importRolls(page, 'rolls.csv', rolledLog({ brake: 300, slopeForce: 0 }));
  await page.getByRole('link', { name: 'Setup' }).click();
  const rolls = part(page);
  for (const ways of ['All out', 'By turns, out first']) {
    await rolls.getByRole('button', { name: /Which way they went/ }).click();
    await page.getByRole('option', { name: ways }).click();
    const fitted = ways === 'All out' ? /Rolled one way only/ : /Out and back differ/;
    await expect(rolls.getByText(fitted)).toBeVisible();
    await expect(rolls.getByText(/something held the car back/)).toHaveCount(2);
  }
});

test('a roll is left out, and the figures are taken, by keys alone; nothing serious for a screen reader', async ({
  page,
}) => {
  await importRolls(page);
  await page.getByRole('link', { name: 'Setup' }).click();
  const rolls = part(page);
  const way = rolls.getByRole('radiogroup', { name: 'Way of roll 2' });
  await way.getByRole('radio', { name: 'Out', exact: true }).focus();
  await page.keyboard.press('ArrowRight');
  await expect(rolls.getByText(/Out and back differ/)).toBeVisible();
  await page.keyboard.press('ArrowRight');
  await expect(rolls.getByText(/Rolled one way only/)).toBeVisible();
  expect(await seriousFindings(page)).toEqual([]);
  await rolls.getByRole('button', { name: 'Take into the car' }).focus();
  await page.keyboard.press('Enter');
  await expect(rolls.getByText('These figures stand in the car.')).toBeVisible();
  await expect(rolls.getByRole('status')).toBeFocused();
  await way.getByRole('radio', { name: 'Leave out' }).focus();
  await way.getByRole('radio', { name: 'Leave out' }).press('ArrowLeft');
  await expect(rolls.getByRole('button', { name: 'Take into the car' })).toBeVisible();
});

test('the way of one roll, and of all, is chosen by keys that follow each other before the fit is answered', async ({
  page,
}) => {
  await importRolls(page);
  await page.getByRole('link', { name: 'Setup' }).click();
  const rolls = part(page);
  await expect(rolls.getByText(/Say of each roll which way it went/)).toBeVisible();
  const letGo = await holdAnswers(page, 'coastDown.fit');
  const second = rolls.getByRole('radiogroup', { name: 'Way of roll 2' });
  await second.getByRole('radio', { name: 'Out', exact: true }).focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await expect(second.getByRole('radio', { name: 'Leave out' })).toBeChecked();
  const first = rolls.getByRole('radiogroup', { name: 'Way of roll 1' });
  await first.getByRole('radio', { name: 'Out', exact: true }).focus();
  await page.keyboard.press('ArrowRight');
  await expect(first.getByRole('radio', { name: 'Back', exact: true })).toBeChecked();
  await expect(second.getByRole('radio', { name: 'Leave out' })).toBeChecked();
  const all = rolls.getByRole('button', { name: /Which way they went/ });
  await all.focus();
  for (let n = 0; n < 3; n++) await page.keyboard.press('ArrowRight');
  await expect(all).toHaveText('By turns, out first');
  letGo();
  await expect(rolls.getByText(/Out and back differ as on a slope of/)).toBeVisible();
  await expect(all).toHaveText('By turns, out first');
});

test('rolls of several logs are fitted together, and a log is left out and chosen again by keys', async ({
  page,
}) => {
  await importRolls(page, 'out.csv', rolledLog({ ways: [1] }));
  await importRolls(page, 'back.csv', rolledLog({ ways: [-1] }));
  await page.getByRole('link', { name: 'Setup' }).click();
  const rolls = part(page);
  const logs = rolls.getByRole('group', { name: 'Logs' });
  // Both were driven for it: they hold no pull.
  await expect(logs.getByRole('checkbox', { name: 'out.csv, 1 roll' })).toBeChecked();
  await expect(logs.getByRole('checkbox', { name: 'back.csv, 1 roll' })).toBeChecked();
  await expect(rolls.getByRole('row')).toHaveCount(5);
  await expect(rolls.getByRole('rowheader', { name: 'back.csv' })).toBeVisible();
  await rolls.getByRole('button', { name: /Which way they went/ }).focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await expect(rolls.getByText(/Out and back differ as on a slope of/)).toBeVisible();
  await expect(rolls.getByText('Force at 150 km/h, extrapolated')).toBeVisible();
  const a = rolls.getByRole('button', { name: /Where from: Coast-down A/ });
  await expect(a).toContainText(/^17\d\.\d+\s± \d/);
  await a.click();
  const panel = page.getByRole('dialog', { name: 'Where this number comes from' });
  await expect(panel).toContainText('out.csv, back.csv, 2 rolls');
  await page.keyboard.press('Escape');
  await logs.getByRole('checkbox', { name: /^back/ }).focus();
  await page.keyboard.press('Space');
  await expect(rolls.getByText(/Rolled one way only/)).toBeVisible();
  await page.keyboard.press('Space');
  await expect(rolls.getByText(/Out and back differ/)).toBeVisible();
  expect(await seriousFindings(page)).toEqual([]);
  await logs.getByRole('checkbox', { name: /^back/ }).press('Space');
  await logs.getByRole('checkbox', { name: /^out/ }).press('Space');
  await expect(rolls.getByText(/No log is chosen/)).toBeVisible();
});
