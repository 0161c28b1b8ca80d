import { AxeBuilder } from '@axe-core/playwright';
import { expect, test } from './support/workbench.ts';

test.beforeEach(async ({ page }) => {
  await page
    .getByRole('navigation', { name: 'Ledger' })
    .getByRole('button', { name: /^2 Boost/ })
    .click();
  await page.getByRole('tab', { name: 'Channels' }).click();
});

test('channels of all pulls are aligned, and one line reads them all by the arrow keys', async ({ page }) => {
  const panel = page.getByRole('tabpanel', { name: 'Channels' });
  const plot = panel.getByRole('img', { name: /Manifold pressure, Lambda, Spark advance: \d pulls aligned/ });
  await expect(plot).toBeVisible();
  // Three channels of every pull, each a line with length in pixels.
  await expect
    .poll(() =>
      plot
        .locator('.scatterlayer .js-line')
        .evaluateAll((all) => all.filter((l) => (l as SVGPathElement).getTotalLength() > 150).length),
    )
    .toBeGreaterThanOrEqual(9);
  const line = panel.getByRole('slider', { name: /^Engine speed, rpm/ });
  await line.focus();
  await page.keyboard.press('ArrowRight');
  await expect(line).toHaveAttribute('aria-valuetext', /rpm/);
  await expect(panel.getByRole('term').filter({ hasText: 'Lambda' })).toBeVisible();
  await expect(panel.getByRole('definition').filter({ hasText: /before 0\.8\d/ })).toBeVisible();
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.filter((v) => v.impact === 'serious' || v.impact === 'critical')).toEqual([]);
});

test('a channel is chosen by keyboard, and time can be the axis', async ({ page }) => {
  const panel = page.getByRole('tabpanel', { name: 'Channels' });
  await panel.getByRole('button', { name: 'Fluid flow' }).focus();
  await page.keyboard.press('Space');
  await expect(panel.getByRole('img', { name: /Fluid flow/ })).toBeVisible();
  await panel.getByText('Time of the pull').click();
  await expect(panel.getByRole('slider', { name: /^Time from the start of the pull, s/ })).toBeAttached();
});
