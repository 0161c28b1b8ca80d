import type { Page } from 'playwright';

/** Opens the workbench by its link, until the picture that the host sends along has made room for the screen. */
export async function openWorkbench(page: Page, link: string): Promise<void> {
  await page.goto(link);
  await page.waitForURL(/\/w-/);
  await page.locator('#picture').waitFor({ state: 'detached' });
}
