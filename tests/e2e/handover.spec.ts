import { expect, test } from './support/workbench.ts';

test('the handover is shown as it will be printed, in either language', async ({ page }) => {
  await page.getByRole('link', { name: 'Handover' }).click();
  // Read as the page hands it over: the test runner's own scripts are not allowed inside, and would complain.
  const sheet = page.getByTitle('Preview of the summary');
  await expect(sheet).toHaveAttribute('srcdoc', /<h1[^>]*>[^<]*Fenmoor/);
  await page.getByText('Deutsch', { exact: true }).click();
  await expect(sheet).toHaveAttribute('srcdoc', /Übergabe/);
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as HTML' }).click();
  expect((await download).suggestedFilename()).toMatch(/fenmoor-hatch-de\.html$/);
  // What is decided stays in the session, and undo takes it back.
  const customer = page.getByRole('textbox', { name: 'Customer' });
  await customer.pressSequentially('A. Example');
  // While the field still has the focus.
  await expect(sheet).toHaveAttribute('srcdoc', /A\. Example/);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(customer).toHaveValue('');
  await expect(sheet).not.toHaveAttribute('srcdoc', /A\. Example/);
  await page.getByText('One page', { exact: true }).click();
  await expect(page.getByRole('radio', { name: 'One page' })).toBeChecked();
  await expect(sheet).toHaveAttribute('srcdoc', /<main class="one-page/);
});

test('the preview shows the sheets that the printer will make', async ({ page }) => {
  await page.getByRole('link', { name: 'Handover' }).click();
  const sheets = page.frameLocator('iframe').locator('.sheet');
  await expect(sheets.last()).toContainText(/Page (\d+) \/ \1/);
  const full = await sheets.count();
  expect(full).toBeGreaterThan(4);
  // The browser prints the page itself; the sheets on screen are as many as come out of it.
  const html = (await page.getByTitle('Preview of the summary').getAttribute('srcdoc')) ?? '';
  const paper = await page.context().newPage();
  await paper.setContent(html);
  const pdf = (await paper.pdf({ preferCSSPageSize: true })).toString('latin1');
  await paper.close();
  expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(full);
  await page.getByText('One page', { exact: true }).click();
  await expect(sheets).toHaveCount(1);
});

test('a click straight out of a text field is not lost', async ({ page }) => {
  await page.getByRole('link', { name: 'Handover' }).click();
  const sheet = page.getByTitle('Preview of the summary');
  await expect(sheet).toHaveAttribute('srcdoc', /Fenmoor/);
  for (const name of ['A. Example', 'B. Example', 'C. Example']) {
    await page.getByRole('textbox', { name: 'Customer' }).fill(name);
    const download = page.waitForEvent('download');
    // With the pauses of a hand: the sheet is written anew while the button is down.
    await page.getByRole('button', { name: 'Save as HTML' }).click({ delay: 400 });
    await download;
    await expect(sheet).toHaveAttribute('srcdoc', new RegExp(name.replace('.', '\\.')));
  }
  await page.getByRole('textbox', { name: 'Customer' }).fill('D. Example');
  await page.getByText('One page', { exact: true }).click({ delay: 400 });
  await expect(page.getByRole('radio', { name: 'One page' })).toBeChecked();
  await expect(sheet).toHaveAttribute('srcdoc', /D\. Example/);
});

test('a folder that is no session is told, and another choice is still there', async ({ page }) => {
  await page.getByRole('link', { name: 'Handover' }).click();
  await page.getByRole('button', { name: /Beside an earlier visit/ }).click();
  await page.getByRole('option', { name: 'Another folder' }).click();
  await page.getByRole('textbox', { name: 'Folder of that session' }).fill('/no/such/folder');
  await page.keyboard.press('Tab');
  await expect(page.getByRole('heading', { name: 'The summary could not be written.' })).toBeVisible();
  await page.getByRole('button', { name: /Beside an earlier visit/ }).click();
  await page.getByRole('option', { name: 'No other visit' }).click();
  await expect(page.getByTitle('Preview of the summary')).toHaveAttribute('srcdoc', /Fenmoor/);
});

test.describe('in an American evening', () => {
  test.use({ timezoneId: 'America/Denver' });

  test('the summary bears the day of the place, not of universal time', async ({ page }) => {
    // Only the day: a stopped clock would stop the page as well.
    await page.evaluate(() => {
      const now = Date.parse('2027-03-15T03:30:00Z');
      globalThis.Date = class extends Date {
        constructor(...given: []) {
          super(...((given.length > 0 ? given : [now]) as []));
        }
      } as DateConstructor;
    });
    await page.getByRole('link', { name: 'Handover' }).click();
    await expect(page.getByRole('textbox', { name: 'Date' })).toHaveValue('14 March 2027');
  });
});
