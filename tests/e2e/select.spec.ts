import { expect, test } from './support/workbench.ts';

test('a list that drops down is worked with keys alone, inside a dialog too', async ({ page }) => {
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await page.keyboard.press('u');
  const dialog = page.getByRole('dialog');
  const power = dialog.getByRole('button', { name: /Power$/ });
  const list = page.getByRole('listbox', { name: 'Power' });
  await power.focus();
  const first = await power.textContent();
  await page.keyboard.press('ArrowDown');
  await expect(list.getByRole('option', { selected: true })).toBeFocused();
  // Escape leaves the list and not the dialog; nothing is chosen, and the focus is where it came from.
  await page.keyboard.press('End');
  await page.keyboard.press('Escape');
  await expect(list).toBeHidden();
  await expect(dialog).toBeVisible();
  await expect(power).toBeFocused();
  await expect(power).toHaveText(first ?? '');
  // Letters find an option by how it begins.
  await page.keyboard.press('Enter');
  await page.keyboard.press('p');
  await expect(list.getByRole('option', { name: 'PS' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(list).toBeHidden();
  await expect(power).toHaveText('PS');
  // Closed, left and right choose.
  await page.keyboard.press('ArrowLeft');
  await expect(power).not.toHaveText('PS');
});

test('a list is left by a click beside it, and stays inside the window', async ({ page }) => {
  await page.getByRole('link', { name: 'Setup' }).click();
  await page.getByRole('button', { name: 'Engine', exact: true }).click();
  const last = page.getByRole('button', { name: /Fuelling at full load$/ });
  await last.scrollIntoViewIfNeeded();
  await last.click();
  const list = page.getByRole('listbox', { name: 'Fuelling at full load' });
  const box = await list.boundingBox();
  const window = page.viewportSize();
  expect(box && window && box.y >= 0 && box.y + box.height <= window.height).toBe(true);
  await page.getByRole('complementary').getByRole('heading').first().click();
  await expect(list).toBeHidden();
});
