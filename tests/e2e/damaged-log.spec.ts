import { chmodSync, copyFileSync, rmSync, statSync, truncateSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { copyOfSample } from '../support/sample-session.ts';
import { test as base, expect } from './support/workbench.ts';

const name = '5-spark-again-a.csv';

/** The sample with a log that was cut short on the disk; the original of it lies beside the session. */
const test = base.extend({
  // biome-ignore lint/correctness/noEmptyPattern: the shape that a fixture without others has
  sessionFolder: async ({}, use) => {
    const folder = copyOfSample();
    const run = join(folder, 'runs', '5-spark-again-a');
    const source = join(run, 'source.csv');
    copyFileSync(source, join(dirname(folder), name));
    chmodSync(source, 0o644);
    truncateSync(source, statSync(source).size >> 1);
    rmSync(join(run, 'channels.bin'), { force: true });
    await use(folder);
    rmSync(dirname(folder), { recursive: true, force: true });
  },
});

test('a log that was damaged on the disk is told in the ledger, with why, and its original mends it', async ({
  page,
  sessionFolder,
}) => {
  const ledger = page.getByRole('navigation', { name: 'Ledger' });
  const told = ledger.getByText(`${name} can’t be used: its pulls are missing from entry 5.`);
  await expect(told).toBeVisible();
  await ledger.getByRole('button', { name: /^2 Boost/ }).click();
  await ledger.getByRole('button', { name: 'See why' }).click();
  await expect(page.getByRole('tabpanel', { name: /Pulls/ })).toContainText(
    'is no longer what was imported. Import the original file again',
  );
  await page.keyboard.press('Shift+I');
  const path = page.getByRole('dialog', { name: 'Import from a path' });
  await path.getByRole('textbox').fill(join(dirname(sessionFolder), name));
  await path.getByRole('button', { name: 'Import', exact: true }).click();
  const where = page.getByRole('dialog', { name: 'Where do these logs belong?' });
  await where.getByRole('button', { name: 'Import', exact: true }).click();
  await expect(told).toBeHidden({ timeout: 30_000 });
});
