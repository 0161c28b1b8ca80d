import { seriousFindings } from './support/serious-findings.ts';
import { expect, test } from './support/workbench.ts';

/** Whether each third of a canvas holds pixels of both inks. */
function panelsWithInk(element: Element): boolean[] {
  const canvas = element as HTMLCanvasElement;
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (!context || canvas.width === 0) return [];
  const third = Math.floor(canvas.height / 3);
  return [0, 1, 2].map((i) => {
    const { data } = context.getImageData(70, i * third, canvas.width - 80, third);
    let blue = 0;
    let rust = 0;
    for (let p = 0; p < data.length; p += 4) {
      if ((data[p + 3] ?? 0) < 200) continue;
      const excess = (data[p + 2] ?? 0) - (data[p] ?? 0);
      if (excess > 60) blue++;
      else if (excess < -80) rust++;
    }
    return blue > 100 && rust > 100;
  });
}

test.beforeEach(async ({ page }) => {
  await page
    .getByRole('navigation', { name: 'Ledger' })
    .getByRole('button', { name: /^2 Boost/ })
    .click();
  await page.getByRole('tab', { name: 'Channels' }).click();
});

test('channels of all pulls are aligned, and one line reads them all by the arrow keys', async ({ page }) => {
  const panel = page.getByRole('tabpanel', { name: 'Channels' });
  const plot = panel.getByRole('img', {
    name: /Manifold pressure, Mixture, Spark advance: \d pulls aligned/,
  });
  await expect(plot).toBeVisible();
  // Both inks are on the canvas, in each of the three panels.
  await expect.poll(() => plot.evaluate(panelsWithInk)).toEqual([true, true, true]);
  const line = panel.getByRole('slider', { name: /^Engine speed, rpm/ });
  await line.focus();
  await page.keyboard.press('ArrowRight');
  await expect(line).toHaveAttribute('aria-valuetext', /rpm/);
  await expect(panel.getByRole('term').filter({ hasText: 'Mixture' })).toBeVisible();
  await expect(panel.getByRole('definition').filter({ hasText: /before 0\.8\d/ })).toBeVisible();
  expect(await seriousFindings(page)).toEqual([]);
});

test('a channel is chosen by keyboard, and time can be the axis', async ({ page }) => {
  const panel = page.getByRole('tabpanel', { name: 'Channels' });
  await panel.getByRole('button', { name: 'Fluid flow' }).focus();
  await page.keyboard.press('Space');
  await expect(panel.getByRole('img', { name: /Fluid flow/ })).toBeVisible();
  await panel.getByText('Time of the pull').click();
  await expect(panel.getByRole('slider', { name: /^Time from the start of the pull, s/ })).toBeAttached();
});

test('keys zoom and move all panels together, and nought shows all again', async ({ page }) => {
  const panel = page.getByRole('tabpanel', { name: 'Channels' });
  const line = panel.getByRole('slider', { name: /^Engine speed, rpm/ });
  await line.focus();
  const range = () =>
    line.evaluate((e) => [Number((e as HTMLInputElement).min), Number((e as HTMLInputElement).max)] as const);
  const whole = await range();
  await page.keyboard.press('+');
  const near = await range();
  expect((near[1] - near[0]) / (whole[1] - whole[0])).toBeCloseTo(0.5, 6);
  await page.keyboard.press('Shift+ArrowRight');
  const moved = await range();
  expect(moved[0] - near[0]).toBeCloseTo(0.1 * (near[1] - near[0]), 3);
  await page.keyboard.press('0');
  expect(await range()).toEqual(whole);
  await expect(panel.getByRole('button', { name: 'Show all' })).toBeDisabled();
});

test('a pinned pull stays when other entries are on the bench', async ({ page }) => {
  const panel = page.getByRole('tabpanel', { name: 'Channels' });
  await panel.getByRole('button', { name: 'Keep 1 · Pull 1 in view' }).click();
  await page.getByRole('navigation', { name: 'Ledger' }).getByRole('button', { name: /^3 / }).click();
  const pin = panel.getByRole('button', { name: 'Keep 1 · Pull 1 in view' });
  await expect(pin).toHaveAttribute('aria-pressed', 'true');
  await pin.click();
  await expect(pin).toBeHidden();
});

test('the reading line passes over a zoomed plot without its lines being drawn again', async ({ page }) => {
  await page.getByRole('tab', { name: 'Channels' }).click();
  const panel = page.getByRole('tabpanel', { name: 'Channels' });
  await expect(panel.getByRole('img')).toBeVisible();
  await panel.getByRole('button', { name: 'Zoom in' }).click();
  const line = panel.getByRole('slider').last();
  await line.focus();
  await page.keyboard.press('ArrowRight');
  await page.evaluate(() => {
    const drawn = { paths: 0 };
    Object.assign(window, { drawn });
    const { beginPath } = CanvasRenderingContext2D.prototype;
    CanvasRenderingContext2D.prototype.beginPath = function () {
      drawn.paths++;
      beginPath.call(this);
    };
  });
  const before = await line.getAttribute('aria-valuetext');
  for (let i = 0; i < 5; i++) await page.keyboard.press('ArrowRight');
  await expect(line).not.toHaveAttribute('aria-valuetext', before ?? '');
  expect(await page.evaluate(() => (window as unknown as { drawn: { paths: number } }).drawn.paths)).toBe(0);
});
