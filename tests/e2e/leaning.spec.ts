import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { Preferences } from '../../core/contract/index.ts';
import { manyPullsSession } from '../support/many-pulls-session.ts';
import { expect, test as workbench } from './support/workbench.ts';

/** A workbench that has opened another day of the same car before. */
const test = workbench.extend<{ preferences: Partial<Preferences> }>({
  // Playwright reads what a fixture needs from this pattern.
  // biome-ignore lint/correctness/noEmptyPattern: it needs nothing
  preferences: async ({}, use) => {
    const folder = await manyPullsSession(mkdtempSync(join(tmpdir(), 'onechange-earlier-')), 'earlier');
    await use({ recent: [{ folder, name: 'A day before (invented)' }] });
    rmSync(dirname(folder), { recursive: true, force: true });
  },
});
test.use({ startsWith: 'many-pulls' });

test('an earlier session is leaned on, the verdict says so, and undo takes it back', async ({ page }) => {
  const ledger = page.getByRole('navigation', { name: 'Ledger' });
  await ledger.getByRole('button', { name: /^1 Boost/ }).click();
  await page.getByRole('tab', { name: 'Why' }).click();
  const said = page.getByText(/^Repeatability leans on earlier sessions of this car: 0\.\d+\s?% a pull\.$/);
  await expect(page.getByText('One pull scatters by')).toBeVisible();
  await expect(said).toBeHidden();

  await page.keyboard.press('l');
  const dialog = page.getByRole('dialog', { name: 'Lean on an earlier session' });
  await expect(dialog.getByRole('button', { name: 'Lean on it' })).toBeDisabled();
  await dialog.getByRole('button', { name: /Earlier session of the same car/ }).click();
  await page.getByRole('option', { name: 'A day before (invented)' }).click();
  await expect(dialog.getByText(/^\d+(\.\d+)? spare pulls$/)).toBeVisible();
  await dialog.getByRole('button', { name: 'Lean on it' }).click();
  await expect(dialog).toBeHidden();
  await expect(said).toBeVisible();

  await page.keyboard.press('Control+z');
  await expect(said).toBeHidden();
});
