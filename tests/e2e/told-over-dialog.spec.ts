import { expect, test } from './support/workbench.ts';

for (const theme of ['day', 'night'] as const) {
  test.describe(`by ${theme}`, () => {
    test.use({ preferences: { theme }, viewport: { width: 1280, height: 720 } });

    test('what the program says at the foot hides no button of a dialog', async ({ page }) => {
      await page.route('**/api/session.edit', (route) =>
        route.fulfill({
          json: {
            ok: false,
            problems: [{ code: 'session/no-run', facts: { runId: 'gone' } }],
          },
        }),
      );
      await page.getByRole('tab', { name: /Pulls/ }).click();
      await page
        .getByRole('tabpanel')
        .getByRole('button', { name: 'Leave out', exact: true })
        .first()
        .click();
      const drop = page.getByRole('dialog', { name: 'Leave this pull out' });
      await drop.getByText('wheelspin').click();
      await drop.getByRole('button', { name: 'Leave out' }).click();
      const told = page.locator('section[aria-live] > div').first();
      await expect(told).toBeVisible();
      await page.keyboard.press('Escape');
      await page
        .getByRole('button', { name: /^Columns of / })
        .first()
        .click();
      const dialog = page.getByRole('dialog', { name: /^Columns of / });
      const button = dialog.getByRole('button', { name: 'Use these columns' });
      await expect(button).toBeVisible();
      const [box, message] = [await button.boundingBox(), await told.boundingBox()];
      expect((box?.y ?? 999) + (box?.height ?? 0)).toBeLessThanOrEqual(message?.y ?? 0);
      // Once it is dismissed, which the open dialog does not prevent, the dialog has the room again.
      await told.getByRole('button').click();
      await expect(told).toBeHidden();
      await expect(dialog).toBeVisible();
      await expect.poll(async () => (await button.boundingBox())?.y ?? 0).toBeGreaterThan(box?.y ?? 999);
    });
  });
}
