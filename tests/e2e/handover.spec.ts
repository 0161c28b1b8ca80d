import { expect, test } from './support/workbench.ts';

// The recorder of traces runs scripts in every frame; the summary's frame forbids them, and would complain.
test.use({ trace: 'off' });

test('the handover is shown as it will be printed, in either language', async ({ page }) => {
  await page.getByRole('link', { name: 'Handover' }).click();
  // Read as the page hands it over: the test runner's own scripts are not allowed inside, and would complain.
  const sheet = page.getByTitle('Preview of the summary');
  await expect(sheet).toHaveAttribute('srcdoc', /<h1[^>]*>[^<]*Fenmoor/);
  await page.getByRole('radio', { name: 'Deutsch' }).click({ force: true });
  await expect(sheet).toHaveAttribute('srcdoc', /Übergabe/);
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as a file (HTML)' }).click();
  expect((await download).suggestedFilename()).toMatch(/fenmoor-hatch-de\.html$/);
  // What is decided stays in the session, and undo takes it back.
  await page.getByRole('textbox', { name: 'Customer' }).fill('A. Example');
  await page.keyboard.press('Tab');
  await expect(sheet).toHaveAttribute('srcdoc', /A\. Example/);
  await page.getByText('One page', { exact: true }).click();
  await expect(page.getByRole('radio', { name: 'One page' })).toBeChecked();
  await expect(sheet).toHaveAttribute('srcdoc', /<main class="one-page/);
});
