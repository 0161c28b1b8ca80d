import type { Page } from 'playwright';
import { expect, test } from './support/workbench.ts';

const headings = (page: Page, within: string) =>
  page.locator(`${within} :is(h1, h2)`).evaluateAll((all) => all.map((heading) => heading.textContent));

const boxOfHeadline = (page: Page, within: string) => page.locator(`${within} main h1`).boundingBox();

test.use({ preferences: { language: 'de', theme: 'night' } });

test.describe('the picture of the first screen that the host sends along', () => {
  test('says what the screen says, at the same place, before any script has run', async ({
    page,
    browser,
  }) => {
    await expect(page.locator('#root h2')).toHaveCount(2);
    const plain = await browser.newContext({ javaScriptEnabled: false, viewport: page.viewportSize() });
    await plain.addCookies(await page.context().cookies(page.url()));
    const picture = await plain.newPage();
    await picture.goto(page.url());
    await expect(picture.locator('#picture')).toBeVisible();
    const said = await headings(picture, '#picture');
    expect(said).toHaveLength(3);
    expect(said).toEqual(await headings(page, '#root'));
    expect(await boxOfHeadline(picture, '#picture')).toEqual(await boxOfHeadline(page, '#root'));
    await expect(picture.locator('html')).toHaveAttribute('lang', 'de');
    await expect(picture.locator('html')).toHaveAttribute('data-theme', 'night');
    await plain.close();
  });

  test('is of the session as it is now', async ({ page }) => {
    const html = async () => (await page.request.get(page.url())).text();
    expect(await html()).not.toContain('A windy evening');
    const status = await page.evaluate(async () => {
      const edits = [{ type: 'session.rename', name: 'A windy evening <b>' }];
      const headers = { 'content-type': 'application/json' };
      const body = JSON.stringify({ input: { edits } });
      return (await fetch('./api/session.edit', { method: 'POST', headers, body })).status;
    });
    expect(status).toBe(200);
    expect(await html()).toContain('A windy evening &lt;b&gt;');
  });

  test('holds keys that are pressed in front of it for the screen', async ({ page }) => {
    await page.reload({ waitUntil: 'domcontentloaded' });
    await page.keyboard.press('?');
    await expect(page.getByRole('dialog')).toBeVisible();
    await expect(page.locator('#picture')).toHaveCount(0);
  });

  test('stands aside where the address names another screen', async ({ page }) => {
    await page.evaluate(() => {
      window.location.hash = 'plan';
    });
    await page.reload({ waitUntil: 'domcontentloaded' });
    await expect(page.locator('#picture')).toBeHidden();
    await expect(page.getByRole('main').getByRole('heading').first()).toBeVisible();
  });
});
