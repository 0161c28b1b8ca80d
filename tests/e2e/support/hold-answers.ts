import type { Page } from 'playwright';

/**
 * Keeps requests of one name from the host until they are let go: what a busy machine does to the time between a key
 * and its answer, at will.
 *
 * @returns lets them go, and those that come later
 */
export async function holdAnswers(page: Page, name: string): Promise<() => void> {
  const url = `**/api/${name}`;
  const gate = Promise.withResolvers<void>();
  await page.route(url, async (route) => {
    await gate.promise;
    await route.continue();
  });
  return () => gate.resolve();
}
