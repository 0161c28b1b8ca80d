import { expect, test } from './support/workbench.ts';

test('from the sample to another verdict, a note and back, without a pointer', async ({ page }) => {
  const headline = page.getByRole('heading', { level: 1 });
  await expect(headline).toBeVisible();
  await page.keyboard.press('k');
  await page.keyboard.press('k');
  await expect(headline).toHaveText(/^Spark \+1\.0°/);
  await page.keyboard.press('?');
  await expect(page.getByRole('dialog', { name: 'Keys' })).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toBeHidden();
  await page.keyboard.press('Control+k');
  await page.keyboard.type('note on');
  await page.keyboard.press('Enter');
  const note = page.getByRole('textbox', { name: 'Note on this entry' });
  await note.focus();
  await page.keyboard.type('windy');
  await expect(page.getByRole('button', { name: /^Undo/ })).toBeEnabled();
});

test('a change is written down by keys alone', async ({ page }) => {
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await page.keyboard.press('a');
  const dialog = page.getByRole('dialog', { name: 'What was changed?' });
  await expect(dialog).toBeVisible();
  await dialog.getByRole('radio', { name: 'Boost' }).focus();
  await page.keyboard.press('Tab');
  await page.keyboard.type('1,10');
  await dialog.getByRole('textbox', { name: 'To' }).focus();
  await page.keyboard.type('1.20');
  await dialog.getByRole('button', { name: 'Add to the ledger' }).focus();
  await page.keyboard.press('Enter');
  await expect(
    page.getByRole('heading', { name: /^Boost 1\.10 to 1\.20\sbar\sg waits for its pulls/ }),
  ).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(page.getByRole('heading', { name: /waits for its pulls/ })).toBeHidden();
});

test('the reading line moves by arrow keys and says what it reads', async ({ page }) => {
  await page
    .getByRole('navigation', { name: 'Ledger' })
    .getByRole('button', { name: /^2 Boost/ })
    .click();
  // Until the entry that was clicked is drawn, the line of the one before stands there.
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(/^Boost from 1\.00 to 1\.10/);
  const line = page.getByRole('slider', { name: /1 · before against 2 · after/ });
  await line.focus();
  await page.keyboard.press('ArrowRight');
  await expect(line).toHaveAttribute('aria-valuetext', /rpm: .*kW/);
});
