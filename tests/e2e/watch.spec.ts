import { appendFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { seriousFindings } from './support/serious-findings.ts';
import { expect, test } from './support/workbench.ts';

const looseLogs = join(import.meta.dirname, '../../sample-sessions/loose-logs');
const before = readFileSync(join(looseLogs, 'before-1.00-bar.csv'), 'utf8');
const after = readFileSync(join(looseLogs, 'after-1.10-bar.csv'), 'utf8');

let logger: string;
test.beforeEach(() => {
  logger = mkdtempSync(join(tmpdir(), 'onechange-logger-'));
});
test.afterEach(() => rmSync(logger, { recursive: true, force: true }));

test.describe('with a new session', () => {
  test.use({ startsWith: 'nothing', viewport: { width: 1280, height: 720 } });

  test('logs that a logger writes bit by bit become pulls and a verdict by themselves', async ({ page }) => {
    test.setTimeout(120_000);
    await page.getByRole('button', { name: 'New session' }).click();
    await page.getByRole('textbox', { name: 'Mass as driven' }).fill('1420');
    await page.getByRole('button', { name: 'Create' }).click();
    await expect(page.getByRole('dialog')).toBeHidden();
    await expect(page.getByRole('heading', { name: 'The baseline waits for its pulls.' })).toBeVisible();

    await page.keyboard.press('f');
    const dialog = page.getByRole('dialog', { name: 'Watch a logger’s folder' });
    await dialog.getByRole('textbox').fill(join(logger, 'nowhere'));
    await dialog.getByRole('button', { name: 'Watch', exact: true }).click();
    await expect(dialog.getByRole('alert')).toContainText('There is nothing at');
    expect(await seriousFindings(page)).toEqual([]);
    await dialog.getByRole('textbox').fill(logger);
    await page.keyboard.press('Enter');
    await expect(dialog).toBeHidden();
    const bar = page.getByRole('region', { name: 'Watch a logger’s folder' });
    await expect(bar).toContainText(/Watching onechange-logger-.*no new log yet/);

    // A logger flushes as it goes.
    const lines = before.split('\n');
    const part = Math.ceil(lines.length / 6);
    for (let from = 0; from < lines.length; from += part) {
      const chunk = lines.slice(from, from + part).join('\n');
      appendFileSync(join(logger, 'one.csv'), from === 0 ? chunk : `\n${chunk}`);
      if (from === 3 * part) {
        await expect(bar).toContainText(/one\.csv is still being written, so far \d+\ss, \d+ pull/);
      }
      await page.waitForTimeout(700);
    }
    await expect(bar).toContainText(/one\.csv: \d pulls/, { timeout: 60_000 });
    await expect(page.getByRole('navigation', { name: 'Ledger' })).toContainText(/Baseline.*\d pulls/);

    await page.keyboard.press('a');
    await page.getByRole('dialog').getByRole('textbox', { name: 'From' }).fill('1.00');
    await page.getByRole('dialog').getByRole('textbox', { name: 'To' }).fill('1.10');
    await page.getByRole('button', { name: 'Add to the ledger' }).click();
    writeFileSync(join(logger, 'two.csv'), after);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(/gained \d+\.\d\skW/, {
      timeout: 60_000,
    });
    await expect(bar).toContainText(/last new log \d+ s ago/);
    expect(await seriousFindings(page)).toEqual([]);
    await bar.getByRole('button', { name: 'Stop watching' }).click();
    await expect(bar).toBeHidden();
  });
});

test('a folder that goes away while it is watched says so', async ({ page }) => {
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.keyboard.press('f');
  await page.getByRole('dialog').getByRole('textbox').fill(logger);
  await page.keyboard.press('Enter');
  const bar = page.getByRole('region', { name: 'Watch a logger’s folder' });
  await expect(bar).toBeVisible();
  rmSync(logger, { recursive: true });
  await expect(bar).toContainText('The folder does not answer', { timeout: 60_000 });
});
