import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from './support/workbench.ts';

test('letters typed right behind the key that opens the commands all arrive', async ({ page }) => {
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  const start = page.getByRole('link', { name: 'Bench', exact: true });
  await start.focus();
  await page.keyboard.press('Control+k');
  await page.keyboard.type('units');
  await expect(page.getByRole('combobox')).toHaveValue('units');
  await expect(page.getByRole('option', { selected: true })).toHaveText(/^Choose units/);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog', { name: 'Units' })).toBeVisible();
  await page.keyboard.press('Escape');
  // The commands that the dialog came from are gone: back to where they were asked for.
  await expect(start).toBeFocused();
});

test('Enter alone runs no command, arrows choose one and go round', async ({ page }) => {
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await page.keyboard.press('Control+k');
  await page.keyboard.press('Enter');
  const dialog = page.getByRole('dialog', { name: 'Commands' });
  await expect(dialog).toBeVisible();
  const options = dialog.getByRole('option');
  await page.keyboard.press('ArrowUp');
  await expect(options.last()).toHaveAttribute('aria-selected', 'true');
  await page.keyboard.press('ArrowDown');
  await expect(options.first()).toHaveAttribute('aria-selected', 'true');
  await page.keyboard.type('no such thing');
  await expect(dialog.getByRole('status')).toBeVisible();
});

test('a dialog begins at its first field, Tab goes round with the button that closes it last, and the focus returns', async ({
  page,
}) => {
  await page.getByRole('tab', { name: 'Pulls' }).click();
  const ask = page.getByRole('tabpanel').getByRole('button', { name: 'Leave out', exact: true }).first();
  await ask.click();
  const dialog = page.getByRole('dialog', { name: 'Leave this pull out' });
  await expect(dialog.getByRole('radio').first()).toBeFocused();
  await expect(page.locator('#root')).toHaveAttribute('inert', '');
  const close = dialog.getByRole('button', { name: 'Close' });
  await page.keyboard.press('Shift+Tab');
  await expect(close).toBeFocused();
  await page.keyboard.press('Shift+Tab');
  await expect(dialog.getByRole('button', { name: 'Cancel' })).toBeFocused();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await expect(dialog.getByRole('radio').first()).toBeFocused();
  await page.keyboard.press('Tab');
  await expect(dialog.getByRole('textbox')).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(ask).toBeFocused();
  await expect(page.locator('#root')).not.toHaveAttribute('inert');
});

test('the focus returns to the menu that a dialog was chosen from', async ({ page }) => {
  const menu = page.getByRole('button', { name: 'Menu' });
  await menu.click();
  await page.getByRole('menuitem', { name: 'Units' }).click();
  await expect(page.getByRole('dialog', { name: 'Units' })).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toBeHidden();
  await expect(menu).toBeFocused();
});

test('what stands under a dialog hears no key, and a press beside it closes it', async ({ page }) => {
  const headline = page.getByRole('heading', { level: 1 });
  await expect(headline).toBeVisible();
  const before = await headline.textContent();
  await page
    .getByRole('button', { name: /Where from/ })
    .first()
    .click();
  const dialog = page.getByRole('dialog');
  await expect(dialog).toBeVisible();
  await page.keyboard.press('k');
  await page.keyboard.press('?');
  await expect(dialog).toHaveCount(1);
  expect(await headline.textContent()).toBe(before);
  // A text marked with the pointer may end beside the dialog.
  const box = await dialog.boundingBox();
  if (!box) throw new Error('the dialog has no box');
  await page.mouse.move(box.x + 60, box.y + box.height - 10);
  await page.mouse.down();
  await page.mouse.move(20, 400);
  await page.mouse.up();
  await expect(dialog).toBeVisible();
  await page.mouse.click(20, 400);
  await expect(dialog).toBeHidden();
});

test('Escape still closes a dialog whose button that had the focus went grey', async ({ page }) => {
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await page.keyboard.press('u');
  const dialog = page.getByRole('dialog', { name: 'Units' });
  await expect(dialog).toBeVisible();
  await page.evaluate(() => (document.activeElement as HTMLElement).blur());
  await page.keyboard.press('Shift+Tab');
  await expect(dialog.getByRole('button', { name: 'Close' })).toBeFocused();
  await page.evaluate(() => (document.activeElement as HTMLElement).blur());
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();
});

test('what was typed in a dialog goes by no way out but after a question, and stays when that is taken back', async ({
  page,
}) => {
  const question = page.getByRole('dialog', { name: 'Close without saving? What was entered' });
  const stay = question.getByRole('button', { name: 'Go on entering' });
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await page.keyboard.press('a');
  const dialog = page.getByRole('dialog', { name: /change/ });
  const where = dialog.getByRole('textbox', { name: 'Where' });
  // A few letters are typed again in a breath.
  await where.fill('all');
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();
  await page.keyboard.press('a');
  const text = 'from 3,500 rpm in third and fourth';
  await where.fill(text);
  const ways = [
    () => page.keyboard.press('Escape'),
    () => dialog.getByRole('button', { name: 'Close' }).click(),
    () => dialog.getByRole('button', { name: 'Cancel' }).click(),
    () => page.mouse.click(8, 400),
  ];
  for (const leave of ways) {
    await leave();
    await expect(stay).toBeFocused();
    await page.keyboard.press('Enter');
    await expect(question).toBeHidden();
    await expect(where).toHaveValue(text);
  }
  // A press beside the question answers it as Escape does; a key that is held answers nothing.
  await page.keyboard.press('Escape');
  await page.mouse.click(8, 400);
  await expect(question).toBeHidden();
  await page.keyboard.down('Escape');
  await page.keyboard.down('Escape');
  await page.keyboard.down('Escape');
  await page.keyboard.up('Escape');
  await expect(stay).toBeFocused();
  // Logs that are dropped meanwhile ask as well, and are taken when the text may go.
  await page.keyboard.press('Escape');
  const transfer = await page.evaluateHandle(() => {
    const data = new DataTransfer();
    for (const name of ['a.csv', 'b.csv']) data.items.add(new File(['x'], name));
    return data;
  });
  await page.dispatchEvent('body', 'drop', { dataTransfer: transfer });
  await expect(stay).toBeFocused();
  await expect(where).toHaveValue(text);
  await question.getByRole('button', { name: 'Discard it' }).click();
  await expect(page.getByRole('dialog')).toHaveCount(1);
  await expect(page.getByRole('dialog').getByText('b.csv')).toBeVisible();
});

test('a quick note is not lost by Escape, nor by a dialog that is opened beside it', async ({
  page,
  sessionFolder,
}) => {
  const notes = () =>
    JSON.parse(readFileSync(join(sessionFolder, 'session.json'), 'utf8')).ledger.map(
      (e: { privateNote: string }) => e.privateNote,
    );
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await page.keyboard.press('n');
  const field = page.getByRole('region', { name: 'Quick note' }).getByRole('textbox');
  await field.fill('fluid smelled of petrol');
  await page.keyboard.press('Escape');
  const question = page.getByRole('dialog', { name: /^Close without saving/ });
  await expect(question.getByRole('button', { name: 'Go on entering' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(question).toBeHidden();
  await expect(field).toBeFocused();
  await expect(field).toHaveValue('fluid smelled of petrol');
  await page.keyboard.press('Escape');
  await question.getByRole('button', { name: 'Discard it' }).click();
  await expect(field).toBeHidden();
  await page.keyboard.press('n');
  await field.fill('gauge read 14.2');
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('menuitem', { name: 'Units' }).click();
  await expect(field).toBeHidden();
  await expect.poll(notes).toContainEqual(expect.stringMatching(/\d\d:\d\d gauge read 14\.2$/));
  expect(notes().join()).not.toContain('smelled');
});
