import { expect, test } from './support/workbench.ts';

for (const viewport of [
  { width: 1280, height: 720 },
  { width: 1920, height: 1080 },
  { width: 1024, height: 768 },
]) {
  test.describe(`at ${viewport.width} by ${viewport.height}`, () => {
    test.use({ viewport });

    test('the workbench is drawn under its policy without complaint, and nothing lies beyond the right edge', async ({
      page,
    }) => {
      await expect(page.locator('#root')).not.toBeEmpty();
      await expect(page).toHaveTitle(/Onechange/);
      const beyond = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(beyond).toBeLessThanOrEqual(0);
    });
  });
}
