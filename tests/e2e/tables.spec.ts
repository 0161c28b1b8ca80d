import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright/test';
import { seriousFindings } from './support/serious-findings.ts';
import { expect, test } from './support/workbench.ts';

const pasted = [
  'Spark, loaded cells',
  'kPa\\rpm\t2000\t3000\t4000\t5000\t6000',
  '100\t20.0\t 22.50\t25.0\t27.0\t28.0',
  '160\t12.0\t14.5\t17.0\t19.0\t20.5',
  '190\t9.0\t11.5\t14.0\t16.0\t17.5',
  '220\t8.0\t10.5\t13.0\t15.0\t16.5',
  '',
  'kept',
  '',
].join('\r\n');

async function openTables(page: Page): Promise<void> {
  const sheets = page.getByRole('navigation', { name: 'Plan' });
  // The key is heard only once the workbench has taken its place.
  await expect(async () => {
    await page.keyboard.press('2');
    await expect(sheets).toBeVisible({ timeout: 1_000 });
  }).toPass();
  await sheets.getByRole('button', { name: 'Tables' }).click();
}

/** A paste as the system hands it over, line ends and all. */
async function paste(page: Page, text: string): Promise<void> {
  await page.getByLabel('Paste the table here').evaluate((field, raw) => {
    const data = new DataTransfer();
    data.setData('text/plain', raw);
    field.dispatchEvent(
      new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }),
    );
  }, text);
}

for (const theme of ['day', 'night'] as const) {
  test.describe(`by ${theme}`, () => {
    test.use({ preferences: { theme } });

    test('the tables sheet and its dialog have no serious finding', async ({ page }) => {
      await openTables(page);
      await expect(page.getByRole('grid')).toBeVisible();
      expect(await seriousFindings(page), 'sheet').toEqual([]);
      await page.getByRole('button', { name: 'Read a table' }).click();
      await expect(page.getByRole('dialog')).toBeVisible();
      expect(await seriousFindings(page), 'dialog').toEqual([]);
    });
  });
}

test('a table is pasted, stepped where the spray covers it, undone, and written into the ledger', async ({
  page,
  sessionFolder,
}) => {
  const stored = (): { tables: { asRead: string; now: string; recorded: string }[]; ledger: unknown[] } =>
    JSON.parse(readFileSync(join(sessionFolder, 'session.json'), 'utf8'));
  const last = () => stored().tables.at(-1);
  await openTables(page);
  await page.getByRole('button', { name: 'Read a table' }).click();
  await paste(page, pasted);
  await page.getByLabel('Name', { exact: true }).fill('Loaded spark');
  await page.getByRole('button', { name: 'Add the table' }).click();
  await expect(page.getByRole('heading', { level: 1, name: /^Loaded spark: 4 by 5 cells/ })).toBeVisible();
  expect(last()?.asRead).toBe(pasted);

  const panel = page.getByRole('complementary', { name: 'Tables' });
  await panel.getByRole('button', { name: 'Cells the spray covers' }).click();
  await expect(panel.getByText(/by the injection curve and 3 pulls/)).toBeVisible();
  // Spark goes up only towards a limit of the user's own.
  await expect(panel.getByText('There is no limit for the spark of this table yet.')).toBeVisible();
  await panel.getByLabel('Your limit, °').fill('22');
  await panel.getByRole('radio', { name: '0', exact: true }).check({ force: true });
  const step = panel.getByRole('button', { name: /^Step [1-9]\d* cells?$/ });
  await expect(step).toBeEnabled();
  await step.click();
  await expect(page.getByRole('heading', { level: 1, name: /changed since it was last/ })).toBeVisible();
  // The screen shows the step before the host has kept it.
  await expect.poll(() => last()?.now).not.toBe(pasted);
  const stepped = last()?.now ?? '';
  expect(stepped.split('\r\n').slice(0, 3)).toEqual(pasted.split('\r\n').slice(0, 3));
  expect(stepped.split('\r\n').slice(6)).toEqual(pasted.split('\r\n').slice(6));

  await page.getByRole('button', { name: 'Undo' }).first().click();
  await expect(page.getByRole('heading', { level: 1, name: /\bas last written down/ })).toBeVisible();
  expect(last()?.now).toBe(pasted);
  await step.click();
  await expect.poll(() => last()?.now).toBe(stepped);

  // What the clipboard gets is the file's own text, byte for byte.
  const copied = page.evaluate(
    () =>
      new Promise<string>((resolve) => {
        document.addEventListener('copy', (e) => resolve(e.clipboardData?.getData('text/plain') ?? ''), {
          once: true,
        });
      }),
  );
  await panel.getByRole('button', { name: 'Copy the table' }).click();
  expect(await copied).toBe(stepped);

  await panel.getByRole('button', { name: 'Record as a change' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Record as a change' }).click();
  // The dialog foretells the name in the same words.
  await expect(page.getByRole('dialog')).toBeHidden();
  await expect(page.getByText(/^In the ledger: Spark \+1\.0°/)).toBeVisible();
  expect(last()?.recorded).toBe(stepped);
  expect(stored().ledger.at(-1)).toMatchObject({
    kind: 'spark',
    change: { table: { name: 'Loaded spark' } },
  });
});

test('a slip of the decimal point is refused, naming line and column', async ({ page }) => {
  await openTables(page);
  await page.getByRole('button', { name: 'Read a table' }).click();
  await paste(page, pasted.replace('15.0', '150'));
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByRole('alert')).toContainText('line 6, column 5');
  await expect(dialog.getByRole('button', { name: 'Add the table' })).toBeDisabled();
});

test('the table is worked with keys alone, and a typed value keeps to the limit', async ({ page }) => {
  await openTables(page);
  const cell = (row: number, column: number) => page.locator(`[data-cell="${row},${column}"]`);
  await cell(0, 0).focus();
  await page.keyboard.press('PageDown');
  await page.keyboard.press('PageDown');
  await expect(cell(15, 0)).toBeFocused();
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('Shift+ArrowUp');
  await expect(page.getByRole('gridcell', { selected: true })).toHaveCount(4);
  await page.keyboard.press('9');
  await page.keyboard.press('Enter');
  await expect(cell(15, 0)).toHaveText('9.0');
  await expect(cell(14, 1)).toBeFocused();
  // The invented limit stands at 24.
  await page.keyboard.press('3');
  await page.keyboard.press('0');
  await page.keyboard.press('Enter');
  await expect(page.getByText(/30\.?0?° is past your limit of 24°/)).toBeVisible();
  await expect(cell(15, 0)).toHaveText('9.0');
});

test('what a spark step did to its table stands with the entry on the bench', async ({ page }) => {
  await page.getByRole('tab', { name: /^Cells/ }).click();
  await expect(page.getByText(/cells of the table “Spark” changed/)).toBeVisible();
});

test('a cell that its neighbours or the limit hold says so, at every press and once while a key is held', async ({
  page,
}) => {
  await openTables(page);
  const panel = page.getByRole('complementary', { name: 'Tables' });
  const cell = page.locator('[data-cell="15,0"]');
  const told = page.getByRole('main').getByRole('status');
  await cell.click();
  const before = Number(await cell.textContent());
  await page.keyboard.press('-');
  await expect(cell).toHaveText((before - 1).toFixed(1));
  await expect(told).toHaveText('1 cell stepped');
  const place = await page.getByRole('grid').boundingBox();
  await page.keyboard.press('-');
  await expect(told).toHaveText(/^Held by its neighbours: 800\srpm 250\skPa\sabs$/);
  await expect(cell).toHaveText((before - 1).toFixed(1));
  // Told again by another press, so that a screen reader says it once more; not while the key is held.
  const line = await told.locator('p').elementHandle();
  await page.keyboard.down('-');
  await expect.poll(() => line?.evaluate((p) => p.isConnected)).toBe(false);
  const again = await told.locator('p').elementHandle();
  for (let i = 0; i < 5; i++) await page.keyboard.down('-');
  await page.keyboard.up('-');
  expect(await again?.evaluate((p) => p.isConnected)).toBe(true);
  await expect(told).not.toContainText('stepped');
  expect(await page.getByRole('grid').boundingBox()).toEqual(place);
  expect(await seriousFindings(page)).toEqual([]);
  await page.keyboard.press('ArrowUp');
  await expect(told).toBeEmpty();

  await panel.getByLabel('Your limit, °').fill(before.toFixed(1));
  await cell.click();
  await page.keyboard.press('+');
  await expect(cell).toHaveText(before.toFixed(1));
  await page.keyboard.press('+');
  await expect(told).toContainText(/^Held at your limit: 800/);
  // Without a limit a key that is held is refused once.
  await panel.getByLabel('Your limit, °').fill('');
  await cell.click();
  for (let i = 0; i < 4; i++) await page.keyboard.down('+');
  await page.keyboard.up('+');
  await expect(page.getByRole('region', { name: 'Messages' }).getByText(/There is no limit/)).toHaveCount(1);
});

test.describe('in a small window', () => {
  test.use({ viewport: { width: 1280, height: 720 } });

  test('nothing covers the lowest rows while they are stepped, nor the cell whose step is refused', async ({
    page,
  }) => {
    await openTables(page);
    const panel = page.getByRole('complementary', { name: 'Tables' });
    const cell = (row: number, column: number) => page.locator(`[data-cell="${row},${column}"]`);
    const isOnTop = (row: number, column: number) =>
      cell(row, column).evaluate((td) => {
        const { left, top, width, height } = td.getBoundingClientRect();
        return document.elementFromPoint(left + width / 2, top + height / 2) === td;
      });
    await cell(0, 5).click();
    for (let i = 0; i < 4; i++) await page.keyboard.press('PageDown');
    await expect(cell(15, 5)).toBeFocused();
    await page.keyboard.press('-');
    await expect(page.getByRole('main').getByRole('status')).toHaveText('1 cell stepped');
    for (const row of [12, 13, 14, 15]) expect(await isOnTop(row, 5), `row ${row}`).toBe(true);
    // What was taken back is not said to have been stepped.
    await page.keyboard.press('Control+z');
    await expect(page.getByRole('main').getByRole('status')).toBeEmpty();

    await panel.getByLabel('Your limit, °').fill('');
    await cell(15, 5).click();
    await page.keyboard.press('+');
    await expect(page.getByRole('region', { name: 'Messages' }).getByText(/There is no limit/)).toBeVisible();
    await expect.poll(() => isOnTop(15, 5)).toBe(true);
  });
});
