import { seriousFindings } from './support/serious-findings.ts';
import { expect, test } from './support/workbench.ts';

for (const theme of ['day', 'night'] as const) {
  test.describe(`by ${theme}`, () => {
    test.use({ preferences: { theme } });

    test('bench and plan have no serious finding', async ({ page }) => {
      await expect(page.getByRole('img', { name: /^Wheel power/ })).toBeVisible();
      expect(await seriousFindings(page), 'bench').toEqual([]);
      await page.getByRole('link', { name: 'Plan' }).click();
      await expect(page.getByRole('slider', { name: 'Start point' })).toBeAttached();
      expect(await seriousFindings(page), 'plan').toEqual([]);
    });
  });
}

test('dialogs and tabs of the bench have no serious finding', async ({ page }) => {
  await expect(page.getByRole('img', { name: /^Wheel power/ })).toBeVisible();
  for (const key of ['?', 'Control+k', 'u', 'a', 'e']) {
    await page.keyboard.press(key);
    await expect(page.getByRole('dialog')).toBeVisible();
    expect(await seriousFindings(page), `dialog on ${key}`).toEqual([]);
    await page.keyboard.press('Escape');
    await expect(page.getByRole('dialog')).toBeHidden();
  }
  for (const tab of [/Pulls/, /Notes/]) {
    await page.getByRole('tab', { name: tab }).click();
    expect(await seriousFindings(page), `tab ${tab}`).toEqual([]);
  }
});

test('setup and ride have no serious finding', async ({ page }) => {
  await page.getByRole('link', { name: 'Setup' }).click();
  for (const section of ['Car', 'Air and place', 'Limits', 'Engine', 'Fluid system', 'Fit review']) {
    await page.getByRole('button', { name: section, exact: true }).click();
    await expect(page.getByRole('heading', { level: 1, name: section })).toBeVisible();
    expect(await seriousFindings(page), section).toEqual([]);
  }
  await page.getByRole('link', { name: 'Ride' }).click();
  await expect(page.getByText('For the passenger.', { exact: false })).toBeVisible();
  expect(await seriousFindings(page), 'ride').toEqual([]);
});

test.describe('with nothing open', () => {
  test.use({ startsWith: 'nothing' });

  test('start screen and new session have no serious finding', async ({ page }) => {
    await expect(page.getByRole('button', { name: 'New session' })).toBeVisible();
    expect(await seriousFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'New session' }).click();
    await expect(page.getByRole('dialog')).toBeVisible();
    expect(await seriousFindings(page)).toEqual([]);
  });
});
