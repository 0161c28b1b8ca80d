import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { holdAnswers } from './support/hold-answers.ts';
import { expect, test } from './support/workbench.ts';

// A second key or click that comes before the host has answered the first counts as well as the first.

test('which way a log went is chosen by two keys in a row', async ({ page }) => {
  await page.getByRole('tab', { name: /Pulls/ }).click();
  const way = page.getByRole('button', { name: /Direction of the pulls in/ }).first();
  await expect(way).toContainText('Direction not given');
  const letGo = await holdAnswers(page, 'session.edit');
  await way.focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await expect(way).toContainText('All back');
  letGo();
  await expect(page.getByRole('button', { name: /^Undo/ })).toBeEnabled();
  await expect(way).toContainText('All back');
});

test('two entries are left out of the summary, and its form chosen, before the host has answered', async ({
  page,
  sessionFolder,
}) => {
  const kept = () => JSON.parse(readFileSync(join(sessionFolder, 'session.json'), 'utf8')).handover;
  await page.getByRole('link', { name: 'Handover' }).click();
  const shown = page.getByRole('group', { name: 'Changes on the sheet' }).getByRole('checkbox');
  await expect(shown.nth(2)).toBeChecked();
  const letGo = await holdAnswers(page, 'session.edit');
  await shown.nth(1).focus();
  await page.keyboard.press('Space');
  await shown.nth(2).focus();
  await page.keyboard.press('Space');
  await expect(shown.nth(1)).not.toBeChecked();
  await expect(shown.nth(2)).not.toBeChecked();
  const paper = page.getByRole('radiogroup', { name: 'Paper' });
  await paper.getByRole('radio', { name: 'A4' }).focus();
  await page.keyboard.press('ArrowRight');
  await expect(paper.getByRole('radio', { name: 'Letter' })).toBeChecked();
  letGo();
  await expect.poll(() => kept()?.paper).toBe('Letter');
  expect(kept().hiddenEntries).toHaveLength(2);
  await expect(shown.nth(1)).not.toBeChecked();
  await expect(shown.nth(2)).not.toBeChecked();
});

test('a cell of a table is stepped twice by two keys in a row', async ({ page }) => {
  await page.getByRole('link', { name: 'Plan' }).click();
  await page.getByRole('navigation', { name: 'Plan' }).getByRole('button', { name: 'Tables' }).click();
  const cell = page.locator('[data-cell="0,0"]');
  await cell.focus();
  // All of them together: none comes to stand too far from its neighbours.
  await page.keyboard.press('Control+a');
  const before = Number(await cell.textContent());
  await page.keyboard.press('-');
  await expect(cell).not.toHaveText(before.toFixed(1));
  const step = before - Number(await cell.textContent());
  expect(step).toBeGreaterThan(0);
  await expect(page.getByRole('button', { name: /^Undo/ }).first()).toBeEnabled();
  const letGo = await holdAnswers(page, 'session.edit');
  await page.keyboard.press('-');
  await page.keyboard.press('-');
  await expect(cell).toHaveText((before - 3 * step).toFixed(1));
  letGo();
  await expect(page.getByText(/stepped/).first()).toBeVisible();
  await expect(cell).toHaveText((before - 3 * step).toFixed(1));
});

test('an entry is dropped and kept again by two keys in a row, and by a third it is dropped', async ({
  page,
  sessionFolder,
}) => {
  const states = () =>
    JSON.parse(readFileSync(join(sessionFolder, 'session.json'), 'utf8')).ledger.map(
      (e: { state: string }) => e.state,
    );
  const ledger = page.getByRole('navigation', { name: 'Ledger' });
  const entry = ledger.getByRole('button', { name: /^2 Boost/ });
  await entry.click();
  await expect(entry).toHaveAttribute('aria-current', 'true');
  expect(states()[2]).toBe('kept');
  const letGo = await holdAnswers(page, 'session.edit');
  await page.keyboard.press('d');
  await expect(entry).toContainText('dropped');
  await page.keyboard.press('d');
  await expect(entry).not.toContainText('dropped');
  letGo();
  // One step of undo each, so that the second was kept as well when two can be taken back.
  await expect(page.getByRole('button', { name: /^Undo/ })).toBeEnabled();
  await expect(entry).not.toContainText('dropped');
  await expect.poll(() => states()[2]).toBe('kept');
  await page.keyboard.press('d');
  await expect.poll(() => states()[2]).toBe('dropped');
  await expect(entry).toContainText('dropped');
});

test('a pull is left out once, and a change written down once, by two keys before the host has answered', async ({
  page,
  sessionFolder,
}) => {
  const kept = () => JSON.parse(readFileSync(join(sessionFolder, 'session.json'), 'utf8')).ledger;
  const before = kept().length;
  await page.getByRole('tab', { name: /Pulls/ }).click();
  await page.getByRole('button', { name: 'Leave out', exact: true }).last().click();
  const letGo = await holdAnswers(page, 'session.edit');
  await page.getByRole('textbox').fill('gust');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  letGo();
  await expect(page.getByRole('dialog')).toBeHidden();
  const row = page.getByRole('row').filter({ hasText: 'gust' });
  await expect(row).not.toContainText('Was left out');
  await page.keyboard.press('a');
  const letGoAgain = await holdAnswers(page, 'session.edit');
  await page.getByRole('textbox', { name: 'Where' }).fill('all');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  letGoAgain();
  await expect(page.getByRole('dialog')).toBeHidden();
  await expect.poll(() => kept().length).toBe(before + 1);
  await page.keyboard.press('Control+z');
  await expect.poll(() => kept().length).toBe(before);
});

test('a mark on the ride is taken back by the key that follows at once', async ({ page }) => {
  await page.keyboard.press('4');
  await expect(page.getByText('The last pull counts')).toBeVisible();
  const said = page.getByRole('status').filter({ visible: true }).first();
  const letGo = await holdAnswers(page, 'session.edit');
  await page.keyboard.press('Space');
  await expect(said).toHaveText('Last pull marked bad');
  await page.keyboard.press('Space');
  await expect(said).toHaveText('It is marked already');
  await page.keyboard.press('Backspace');
  await expect(said).toHaveText('The mark is gone');
  letGo();
  await expect(said).toHaveText('The mark is gone');
  await page.keyboard.press('Backspace');
  await expect(said).toHaveText('Nothing was marked here');
});

test('pinning a pull and choosing a channel move no button beside or below them', async ({ page }) => {
  await page
    .getByRole('navigation', { name: 'Ledger' })
    .getByRole('button', { name: /^2 Boost/ })
    .click();
  await page.getByRole('tab', { name: 'Channels' }).click();
  const panel = page.getByRole('tabpanel', { name: 'Channels' });
  const channels = panel.getByRole('group', { name: 'Channels' }).getByRole('button');
  const places = () =>
    channels.evaluateAll((all) =>
      all.map((b) => ({ name: b.textContent, ...b.getBoundingClientRect().toJSON() })),
    );
  await expect(page.getByRole('slider').first()).toBeVisible();
  const before = await places();
  await panel.getByRole('button', { name: 'Keep 1 · Pull 1 in view' }).click();
  await expect(page.getByRole('list', { name: 'Pinned pulls' })).toBeVisible();
  expect(await places()).toEqual(before);
  await panel.getByRole('button', { name: 'Fluid flow' }).click();
  await expect(panel.getByRole('img', { name: /Fluid flow/ })).toBeVisible();
  expect(await places()).toEqual(before);
});

test('tabs go on by two keys in a row', async ({ page }) => {
  const tabs = page.getByRole('tab');
  await tabs.first().click();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await expect(tabs.nth(2)).toBeFocused();
  await expect(tabs.nth(2)).toHaveAttribute('aria-selected', 'true');
});

test('a limit holds the very next key in its table, before the host has answered', async ({ page }) => {
  await page.getByRole('link', { name: 'Plan' }).click();
  await page.getByRole('navigation', { name: 'Plan' }).getByRole('button', { name: 'Tables' }).click();
  const cell = page.locator('[data-cell="15,0"]');
  await cell.click();
  const before = await cell.textContent();
  const letGo = await holdAnswers(page, 'session.edit');
  await page.getByLabel('Your limit, °').fill(before ?? '');
  await cell.click();
  await page.keyboard.press('+');
  await expect(page.getByRole('main').getByRole('status')).toContainText(/^Held at your limit: 800/);
  await expect(cell).toHaveText(before ?? '');
  letGo();
  await expect(page.getByRole('button', { name: /^Undo/ }).first()).toBeEnabled();
  await expect(cell).toHaveText(before ?? '');
});
