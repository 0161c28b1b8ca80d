import { expect, test } from './support/workbench.ts';

test.describe('a book longer than its window', () => {
  test.use({ viewport: { width: 1280, height: 460 } });

  test('the entry that is judged is in sight from the start, and the one that a key chose', async ({
    page,
  }) => {
    const ledger = page.getByRole('navigation', { name: 'Ledger' });
    const row = (name: RegExp) => ledger.getByRole('button', { name });
    await expect(row(/^5 Spark/)).toBeInViewport({ ratio: 0.9 });
    for (let i = 0; i < 5; i++) await page.keyboard.press('k');
    await expect(row(/^0 Baseline/)).toBeInViewport({ ratio: 0.9 });
    await expect(row(/^5 Spark/)).not.toBeInViewport();
    for (let i = 0; i < 5; i++) await page.keyboard.press('j');
    await expect(row(/^5 Spark/)).toBeInViewport({ ratio: 0.9 });
  });
});
