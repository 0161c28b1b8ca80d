import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FileChooser } from 'playwright/test';
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
  await expect(page.getByRole('button', { name: /Drop two logs here/ })).toBeVisible();
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

test('a file that is no log is named and left where it is, and the log beside it is taken', async ({
  page,
}) => {
  await page.getByRole('button', { name: 'New session' }).click();
  await page.getByRole('textbox', { name: 'Mass as driven' }).fill('1420');
  await page.keyboard.press('Enter');
  const waits = page.getByRole('heading', { name: 'The baseline waits for its pulls.' });
  await expect(waits).toBeVisible();
  const choose = async (files: Parameters<FileChooser['setFiles']>[0]) => {
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: /Drop the log here/ }).click();
    await (await chooser).setFiles(files);
  };
  const web = Buffer.from('<html><body>no log</body></html>');
  await choose({ name: 'page.csv', mimeType: 'text/csv', buffer: web });
  await expect(page.getByRole('alert')).toContainText('page.csv: The file is a web page, not a log.');
  await expect(page.getByRole('alert')).toContainText('Export the run as a text table (CSV)');
  // Nothing of it stands in the session: the baseline waits as before.
  await expect(waits).toBeVisible();

  const picture = Buffer.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0]);
  const log = { name: 'before.csv', mimeType: 'text/csv', buffer: readFileSync(logs[0] ?? '') };
  await choose([{ name: 'picture.csv', mimeType: 'text/csv', buffer: picture }, log]);
  await expect(page.getByRole('alert').filter({ hasText: 'picture.csv' })).toContainText(
    'an image, not a log',
  );
  await expect(page.getByRole('tab', { name: /^Pulls\s*[1-9]/ })).toBeVisible();
  await page.getByRole('tab', { name: /^Pulls/ }).click();
  const run = page.getByRole('main').getByRole('listitem');
  await expect(run.filter({ hasText: 'before.csv' }).first()).toBeVisible();
  await expect(run.filter({ hasText: /page|picture/ })).toHaveCount(0);
});

test('what is wrong with a log is said until it is read, however many follow, and stays written beside the logs', async ({
  page,
}) => {
  await page.getByRole('button', { name: 'New session' }).click();
  await page.getByRole('textbox', { name: 'Mass as driven' }).fill('1420');
  await page.keyboard.press('Enter');
  const good = readFileSync(logs[0] ?? '', 'utf8').split('\n');
  const timeless = good.map((line) => line.split(/[,;]/).slice(1).join(';'));
  // A row more or less makes another file of it.
  const later = [1, 2, 3, 4].map((n) => [`good-${n}.csv`, good.slice(0, -n)] as const);
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: /Drop the log here/ }).click();
  await (await chooser).setFiles(
    [['a-timeless.csv', timeless] as const, ...later].map(([name, lines]) => ({
      name,
      mimeType: 'text/csv',
      buffer: Buffer.from(lines.join('\n')),
    })),
  );
  await expect(page.getByText('good-4.csv is in')).toBeVisible({ timeout: 60_000 });
  const timelessSaid = /^a-timeless\.csv: .*None of the columns holds the time/;
  await expect(page.getByRole('alert').filter({ hasText: timelessSaid })).toBeVisible();
  await page.getByRole('tab', { name: /^Pulls/ }).click();
  await expect(
    page.getByRole('tabpanel').getByRole('listitem').filter({ hasText: timelessSaid }),
  ).toBeVisible();
});

test('a log that is imported once more into another entry is said to count in both, and undo takes it out', async ({
  page,
}) => {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: /Drop two logs here, or choose files/ }).click();
  await (await chooser).setFiles(logs);
  await page.getByRole('textbox', { name: 'Mass as driven' }).fill('1420');
  await page.getByRole('button', { name: 'Create' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(/^Boost gained/, { timeout: 30_000 });
  const transfer = await page.evaluateHandle(
    (text) => {
      const data = new DataTransfer();
      data.items.add(new File([text], 'before-again.csv'));
      return data;
    },
    readFileSync(logs[0] ?? '', 'utf8'),
  );
  await page.dispatchEvent('body', 'drop', { dataTransfer: transfer });
  await page
    .getByRole('dialog', { name: 'Where do these logs belong?' })
    .getByRole('button', { name: 'Import' })
    .click();
  await expect(
    page.getByText(/before-again\.csv was imported before\. Its pulls now count in the entries 0 and 2/),
  ).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(
    page.getByRole('navigation', { name: 'Ledger' }).getByRole('button', { name: /^2 / }),
  ).toContainText('waiting for its log');
});
