import type { Page } from 'playwright/test';
import type { Preferences } from '../../core/contract/index.ts';
import { coarsePicture } from './support/coarse-picture.ts';
import { expect, test } from './support/workbench.ts';

type Look = {
  readonly name: string;
  readonly theme: NonNullable<Preferences['theme']>;
  readonly startsWith: 'sample' | 'nothing';
  readonly viewport?: { readonly width: number; readonly height: number };
  readonly reach: (page: Page) => Promise<unknown>;
};

const drawn = (page: Page) => page.locator('.js-plotly-plot .main-svg').first().waitFor();

const gain = async (page: Page) => {
  await page
    .getByRole('navigation', { name: 'Ledger' })
    .getByRole('button', { name: /^2 Boost/ })
    .click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(/gained/);
  await drawn(page);
};
const plan = async (page: Page) => {
  await page.getByRole('link', { name: 'Plan' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(/^Start at/);
  await drawn(page);
};
const setup = async (page: Page) => {
  await page.getByRole('link', { name: 'Setup' }).click();
  await page.getByRole('button', { name: 'Engine', exact: true }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Engine');
  const follows = page.getByRole('complementary', { name: 'What follows' });
  await expect(follows.getByRole('button', { name: /Where from: Fluid needed at peak/ })).toBeVisible();
};
const ride = async (page: Page) => {
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.getByRole('link', { name: 'Ride' }).click();
  await expect(page.getByRole('main', { name: 'Ride' }).getByRole('term').first()).toBeVisible();
};
const handover = async (page: Page) => {
  await page.getByRole('link', { name: 'Handover' }).click();
  const date = page.getByLabel('Date on the sheet');
  await date.fill('2026-05-16');
  await date.blur();
  await expect(page.getByTitle('Preview of the summary')).toHaveAttribute('srcdoc', /16 May 2026/);
};
const start = (page: Page) => page.getByRole('button', { name: 'Open the sample' }).waitFor();

const looks: readonly Look[] = [
  { name: 'start-day', theme: 'day', startsWith: 'nothing', reach: start },
  { name: 'bench-gain-day', theme: 'day', startsWith: 'sample', reach: gain },
  { name: 'bench-gain-night', theme: 'night', startsWith: 'sample', reach: gain },
  { name: 'setup-engine-day', theme: 'day', startsWith: 'sample', reach: setup },
  { name: 'plan-fluid-day', theme: 'day', startsWith: 'sample', reach: plan },
  { name: 'plan-fluid-night', theme: 'night', startsWith: 'sample', reach: plan },
  {
    name: 'ride-night',
    theme: 'night',
    startsWith: 'sample',
    viewport: { width: 1366, height: 768 },
    reach: ride,
  },
  { name: 'handover-day', theme: 'day', startsWith: 'sample', reach: handover },
];

/**
 * How far a picture may be from its baseline. A cell counts as different from 26 of 255 steps of grey on
 * (threshold 0.1): more than what another smoothing of letters leaves in a mean over sixteen pixels (by
 * estimate, not measured on another system). Some 230 of the 57,600 cells of a picture may be different, a
 * patch of 60 by 60 pixels of the screen: a button that is gone is seen, a digit is not, and has other tests.
 */
const tolerance = { threshold: 0.1, maxDiffPixelRatio: 0.004 };

test.use({
  contextOptions: { reducedMotion: 'reduce' },
});

for (const { name, theme, startsWith, viewport = { width: 1280, height: 720 }, reach } of looks) {
  test.describe(name, () => {
    test.use({ preferences: { theme }, startsWith, viewport });

    test('looks as it did', async ({ page }) => {
      await reach(page);
      // What comes last may still be on its way from the host while the page rests.
      await expect(async () => {
        expect(await coarsePicture(page)).toMatchSnapshot(`${name}.png`, tolerance);
      }).toPass({ intervals: [1000, 4000, 10_000], timeout: 60_000 });
    });
  });
}
