import { expect, test } from './support/workbench.ts';

test.beforeEach(async ({ page }) => {
  await page
    .getByRole('navigation', { name: 'Ledger' })
    .getByRole('button', { name: /^2 Boost/ })
    .click();
  await page.getByRole('tab', { name: 'Channels' }).click();
});

test('a range drawn past the edge of the plot ends with the plot, selects no text, and can be drawn again', async ({
  page,
}) => {
  const panel = page.getByRole('tabpanel', { name: 'Channels' });
  const plot = panel.getByRole('img', { name: /pulls aligned/ });
  await plot.scrollIntoViewIfNeeded();
  const line = panel.getByRole('slider', { name: /^Engine speed, rpm/ });
  const range = () =>
    line.evaluate((e) => [Number((e as HTMLInputElement).min), Number((e as HTMLInputElement).max)] as const);
  const whole = await range();
  const { x, y, width, height } = (await plot.boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 };
  const middle = y + height / 2;
  const draw = async (from: number, to: number) => {
    await page.mouse.move(x + from * width, middle);
    await page.mouse.down();
    await page.mouse.move(x + ((from + to) / 2) * width, middle, { steps: 4 });
    await page.mouse.move(x + to * width, middle, { steps: 4 });
    await page.mouse.up();
  };
  await draw(0.5, 1.1);
  await expect.poll(async () => (await range())[0]).toBeGreaterThan(whole[0]);
  expect((await range())[1]).toBeCloseTo(whole[1], 3);
  expect(await page.evaluate(() => String(getSelection()))).toBe('');
  const once = await range();
  await draw(0.3, 0.6);
  await expect.poll(async () => (await range())[1]).toBeLessThan(once[1]);
});

test('chosen channels and the axis stay when the ledger moves on and when another tab was looked at', async ({
  page,
}) => {
  const panel = page.getByRole('tabpanel', { name: 'Channels' });
  await panel.getByRole('button', { name: 'Fluid flow' }).click();
  await panel.getByText('Time of the pull').click();
  const kept = async () => {
    await expect(panel.getByRole('button', { name: 'Fluid flow' })).toHaveAttribute('aria-pressed', 'true');
    await expect(panel.getByRole('slider', { name: /^Time from the start of the pull/ })).toBeAttached();
  };
  await kept();
  await page.getByRole('navigation', { name: 'Ledger' }).getByRole('button', { name: /^3 / }).click();
  await kept();
  await page.getByRole('tab', { name: /^Pulls/ }).click();
  await page.getByRole('tab', { name: 'Channels' }).click();
  await kept();
});

test('the values at the line stay in sight over the last panel, the plot stands still under the pointer, and the line reads something at both ends', async ({
  page,
}) => {
  const panel = page.getByRole('tabpanel', { name: 'Channels' });
  await panel.getByRole('button', { name: 'Fluid flow' }).click();
  const plot = panel.getByRole('img', { name: /Fluid flow: \d pulls aligned/ });
  const values = panel.getByLabel(/^At /);
  const top = () => plot.evaluate((e) => e.getBoundingClientRect().top);
  await expect(plot).toBeVisible();
  const before = await top();
  const line = panel.getByRole('slider', { name: /^Engine speed, rpm/ });
  await line.evaluate((e) => (e as HTMLElement).focus({ preventScroll: true }));
  await page.keyboard.press('ArrowRight');
  await expect(values).toContainText('rpm');
  expect(await top()).toBe(before);
  await line.scrollIntoViewIfNeeded();
  await expect(values).toBeInViewport({ ratio: 1 });
  for (const key of ['Home', 'End']) {
    await page.keyboard.press(key);
    await expect(
      values
        .getByRole('definition')
        .filter({ hasText: /^after \d/ })
        .first(),
    ).toBeVisible();
  }
  // One ring, around the plot that has the keys.
  const rings = await page.evaluate(() =>
    [...document.querySelectorAll('main *')].filter(
      (e) => getComputedStyle(e).outlineStyle !== 'none' && e.getBoundingClientRect().width > 2,
    ),
  );
  expect(rings).toHaveLength(1);
});
