import { seriousFindings } from './support/serious-findings.ts';
import { expect, test } from './support/workbench.ts';

test('an earlier version is looked at, brought back, and undo takes that back', async ({ page }) => {
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.keyboard.press('Shift+N');
  await page.getByRole('textbox', { name: 'Note on this entry' }).fill('gusty from the left');
  await expect(page.getByRole('button', { name: 'Undo: entry' })).toBeEnabled();
  await page.getByRole('heading', { level: 1 }).click();

  await page.keyboard.press('h');
  const dialog = page.getByRole('dialog', { name: 'Earlier versions of this session' });
  const versions = dialog.getByRole('list', { name: 'Versions, newest first' });
  await expect(versions.getByRole('button').first()).toBeVisible();
  const looked = dialog.getByRole('article', { name: 'To look at only' });
  await expect(looked).toContainText(/What is different today.*entry 5: its note/);
  await expect(looked).toContainText('Baseline');
  expect(await seriousFindings(page)).toEqual([]);
  await dialog.getByRole('button', { name: 'Bring this version back' }).click();
  await expect(dialog).toBeHidden();
  await expect(page.getByText('The earlier version is the present one now.')).toBeVisible();
  const undo = page.getByRole('button', { name: 'Undo: earlier version brought back' });
  await expect(undo).toBeEnabled();
  await page.keyboard.press('Control+z');
  await expect(page.getByRole('button', { name: 'Undo: entry' })).toBeEnabled();
});
