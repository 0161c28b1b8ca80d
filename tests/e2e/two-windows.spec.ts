import type { Page } from 'playwright';
import { expect, test } from './support/workbench.ts';

/** A second window of the same browser on the same workbench. */
async function secondWindow(page: Page): Promise<Page> {
  const second = await page.context().newPage();
  await second.goto(page.url());
  await second.locator('#picture').waitFor({ state: 'detached' });
  await second.getByRole('heading', { level: 1 }).waitFor();
  return second;
}

async function doAction(page: Page, title: string): Promise<void> {
  await page.keyboard.press('Control+k');
  await page.keyboard.type(title);
  await page.keyboard.press('Enter');
}

test('what one window edits the other shows, and undo in the other takes it back in both', async ({
  page,
}) => {
  const second = await secondWindow(page);
  await page.keyboard.press('Shift+N');
  const note = (of: Page) => of.getByRole('textbox', { name: 'Note on this entry' });
  const before = await note(page).inputValue();
  await note(page).fill('gusty from the left');
  await page.getByRole('heading', { level: 1 }).click();
  const undo = (of: Page) => of.getByRole('button', { name: 'Undo: entry' });
  await expect(undo(second)).toBeEnabled();
  await second.keyboard.press('Shift+N');
  await expect(note(second)).toHaveValue('gusty from the left');

  await undo(second).click();
  await expect(note(second)).toHaveValue(before);
  await expect(undo(page)).toHaveCount(0);
  await page.keyboard.press('Shift+N');
  await expect(note(page)).toHaveValue(before);
});

test('a window follows the other to another session, and to the start screen where that is closed', async ({
  page,
}) => {
  const second = await secondWindow(page);
  // Raises the revision of the first session over that of a fresh one.
  await page.keyboard.press('Shift+N');
  await page.getByRole('textbox', { name: 'Note on this entry' }).fill('gusty');
  await page.getByRole('heading', { level: 1 }).click();
  await expect(page.getByRole('button', { name: 'Undo: entry' })).toBeEnabled();

  await doAction(second, 'Close the session');
  const start = (of: Page) => of.getByRole('button', { name: /sample/i }).first();
  await expect(start(second)).toBeVisible();
  await expect(start(page)).toBeVisible();

  // The same folder again begins with nothing to undo; the window beside it must not keep what it had.
  await start(second).click();
  await expect(second.getByRole('navigation', { name: 'Ledger' })).toBeVisible();
  await expect(page.getByRole('navigation', { name: 'Ledger' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Undo: entry' })).toHaveCount(0);
});
