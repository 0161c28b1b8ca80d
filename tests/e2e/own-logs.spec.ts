import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from './support/workbench.ts';

const looseLogs = join(import.meta.dirname, '../../sample-sessions/loose-logs');
const logs = ['before-1.00-bar.csv', 'after-1.10-bar.csv'].map((name) => join(looseLogs, name));

test.use({ startsWith: 'nothing' });

test('two logs of one’s own become a verdict by two clicks and one number', async ({ page }) => {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: /Drop two logs here, or choose files/ }).click();
  await (await chooser).setFiles(logs);
  await page.getByRole('textbox', { name: 'Mass as driven' }).fill('1420');
  await page.getByRole('button', { name: 'Create' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(/^Boost gained \d+\.\d\skW/, {
    timeout: 30_000,
  });
  await expect(page.getByRole('img', { name: /0 · before.*1 · after/ })).toBeVisible();
});

test('files dropped on the window are taken, and a missing mass is asked for in words', async ({ page }) => {
  const transfer = await page.evaluateHandle(
    (contents) => {
      const data = new DataTransfer();
      for (const { name, text } of contents) data.items.add(new File([text], name));
      return data;
    },
    logs.map((path) => ({ name: path.split('/').at(-1) ?? '', text: readFileSync(path, 'utf8') })),
  );
  await page.dispatchEvent('body', 'dragover', { dataTransfer: transfer });
  await expect(page.getByText('Drop logs to import them')).toBeVisible();
  await page.dispatchEvent('body', 'drop', { dataTransfer: transfer });
  await page.getByRole('button', { name: 'Create' }).click();
  await expect(page.getByText('Power needs the mass of the car.')).toBeVisible();
});

test('a file that is no log says so and leaves the session whole', async ({ page }) => {
  await page.getByRole('button', { name: 'New session' }).click();
  await page.getByRole('textbox', { name: 'Mass as driven' }).fill('1420');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Drive the baseline.' })).toBeVisible();
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: /Drop the log here/ }).click();
  await (await chooser).setFiles({
    name: 'page.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from('<html><body>no log</body></html>'),
  });
  await expect(page.getByRole('alert')).toBeVisible();
});
