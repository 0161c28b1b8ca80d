import { expect, test } from './support/workbench.ts';

test.describe('with the sample open', () => {
  test('two entries are chosen, the verdict is read, the overlay is drawn', async ({ page }) => {
    const ledger = page.getByRole('navigation', { name: 'Ledger' });
    await ledger.getByRole('button', { name: /^2 Boost/ }).click();
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(
      /^Boost from 1\.00 to 1\.10\sbar\sg gained \d+\.\d\skW, give or take \d\.\d/,
    );
    await expect(page.getByText(/\d pulls against \d, third gear\./)).toBeVisible();
    const plot = page.getByRole('img', { name: /2 · after/ });
    await expect(plot).toBeVisible();
    // Lines with length in pixels: a plot that was merely mounted has none.
    const drawn = () =>
      plot
        .locator('.scatterlayer .js-line')
        .evaluateAll(
          (lines) => lines.filter((line) => (line as SVGPathElement).getTotalLength() > 200).length,
        );
    await expect.poll(drawn).toBeGreaterThanOrEqual(3);
    await expect(page.getByRole('row', { name: /^Boost bar\sg .*declared, and it happened/ })).toBeVisible();
  });

  test('any entry can stand before: the baseline against the boost step', async ({ page }) => {
    const ledger = page.getByRole('navigation', { name: 'Ledger' });
    await ledger.getByRole('button', { name: /^2 Boost/ }).click();
    await ledger.getByRole('button', { name: /^0 Baseline/ }).click({ modifiers: ['Shift'] });
    await expect(page.getByRole('img', { name: /0 · before.*2 · after/ })).toBeVisible();
  });

  test('a pull is left out with its reason, and comes back by undo', async ({ page }) => {
    await page
      .getByRole('navigation', { name: 'Ledger' })
      .getByRole('button', { name: /^2 Boost/ })
      .click();
    await page.getByRole('tab', { name: /Pulls/ }).click();
    const row = page.getByRole('row', { name: /\bPull 1 2-boost/ });
    await row.getByRole('button', { name: 'Leave out' }).click();
    await page.getByRole('radio', { name: 'wheelspin' }).click({ force: true });
    await page.getByRole('dialog').getByRole('button', { name: 'Leave out' }).click();
    await expect(row).toContainText('wheelspin');
    await expect(page.getByText(/^2 pulls against/)).toBeVisible();
    await page.keyboard.press('Control+z');
    await expect(row).not.toContainText('wheelspin');
    await expect(page.getByText(/^3 pulls against/)).toBeVisible();
  });

  test('a range drawn over the plot is what the verdict is judged over', async ({ page }) => {
    await page
      .getByRole('navigation', { name: 'Ledger' })
      .getByRole('button', { name: /^2 Boost/ })
      .click();
    const plot = page.getByRole('img', { name: /2 · after/ });
    await expect(plot).toBeVisible();
    const box = await plot.boundingBox();
    if (!box) throw new Error('the plot has no box');
    await page.mouse.move(box.x + box.width * 0.5, box.y + 120);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width * 0.8, box.y + 120, { steps: 5 });
    await page.mouse.up();
    await page.mouse.move(box.x + 10, box.y + box.height + 60);
    await expect(page.getByText(/^Judged from [\d,]+\srpm to [\d,]+\srpm/)).toBeVisible();
    await page.getByRole('button', { name: 'Whole range' }).click();
    await expect(page.getByText(/^Judged from/)).toBeHidden();
  });
});
