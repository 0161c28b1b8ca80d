import type { Page } from 'playwright/test';
import { expect, test } from './support/workbench.ts';

/** Scripts that the page has asked for so far; `page` stands on the workbench already, so it is loaded anew. */
async function scriptsFromNow(page: Page): Promise<() => string[]> {
  const asked: string[] = [];
  page.on('request', (request) => {
    if (request.resourceType() === 'script')
      asked.push(new URL(request.url()).pathname.split('/').at(-1) ?? '');
  });
  await page.reload();
  return () => asked;
}
const plotly = expect.stringMatching(/^plotly/);

test.describe('with nothing open', () => {
  test.use({ startsWith: 'nothing' });

  test('the start screen and a new session load no plotly, choosing a log does', async ({ page }) => {
    const scripts = await scriptsFromNow(page);
    await page.getByRole('button', { name: 'New session' }).click();
    await page.getByRole('textbox', { name: 'Mass as driven' }).fill('1420');
    await page.getByRole('button', { name: 'Create' }).click();
    await expect(page.getByRole('heading', { name: 'The baseline waits for its pulls.' })).toBeVisible();
    await page.waitForLoadState('networkidle');
    expect(scripts()).not.toEqual([]);
    expect(scripts()).not.toContainEqual(plotly);
    // A log is on its way, and with it the first plot.
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: /Drop the log here/ }).click();
    await chooser;
    await expect.poll(scripts).toContainEqual(plotly);
    await expect(page.locator('.js-plotly-plot')).toHaveCount(0);
  });
});

test('setup and ride load no plotly, the first plot does', async ({ page }) => {
  await page.getByRole('link', { name: 'Setup' }).click();
  const scripts = await scriptsFromNow(page);
  await expect(page.getByRole('textbox', { name: 'Mass as driven' })).toBeVisible();
  await page.keyboard.press('4');
  await expect(page.getByRole('main', { name: 'Ride' }).getByRole('term').first()).toBeVisible();
  await page.waitForLoadState('networkidle');
  expect(scripts()).not.toEqual([]);
  expect(scripts()).not.toContainEqual(plotly);
  await page.keyboard.press('Escape');
  await page
    .getByRole('navigation', { name: 'Ledger' })
    .getByRole('button', { name: /^2 Boost/ })
    .click();
  await expect(page.locator('.js-plotly-plot .main-svg').first()).toBeVisible();
  expect(scripts()).toContainEqual(plotly);
});
