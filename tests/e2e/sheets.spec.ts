import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { imperialUnits } from '../../core/units/index.ts';
import { expect, test } from './support/workbench.ts';

test('a number typed on the setup sheet shows at once what follows, and undo takes it back', async ({
  page,
}) => {
  await page.getByRole('link', { name: 'Setup' }).click();
  await page.getByRole('button', { name: 'Engine', exact: true }).click();
  const follows = page.getByRole('complementary', { name: 'What follows' });
  const need = follows.getByRole('button', { name: /Where from: Fluid needed at peak/ });
  const before = await need.textContent();
  const power = page.getByRole('textbox', { name: 'Target power at the crank' });
  await power.fill('250');
  await expect(need).not.toHaveText(before ?? '');
  const undo = page.getByRole('button', { name: /^Undo/ });
  await expect(undo).toBeEnabled();
  await undo.click();
  await expect(power).toHaveValue('209');
  await expect(need).toHaveText(before ?? '');
});

test('a number is kept in the unit it was typed in', async ({ page }) => {
  await page.getByRole('link', { name: 'Setup' }).click();
  await page.getByRole('button', { name: 'Engine', exact: true }).click();
  await page.getByRole('button', { name: /bar g Unit of Peak boost/ }).click();
  await page.getByRole('option', { name: 'psi' }).click();
  const boost = page.getByRole('textbox', { name: 'Peak boost' });
  await boost.fill('18.5');
  await expect(page.getByRole('button', { name: /^Undo/ })).toBeEnabled();
  await page.keyboard.press('Tab');
  await page.getByRole('link', { name: 'Bench', exact: true }).click();
  await page.getByRole('link', { name: 'Setup' }).click();
  await expect(page.getByRole('textbox', { name: 'Peak boost' })).toHaveValue('18.5');
});

test('the start point moves by keys, the sentence follows, and the way becomes by hand', async ({ page }) => {
  await page.getByRole('link', { name: 'Plan' }).click();
  const sentence = page.getByRole('heading', { level: 1 });
  await expect(sentence).toHaveText(/^Start at 0\.40\sbar\sg, full at 1\.00\sbar\sg\./);
  await page.getByRole('radio', { name: /^Start later/ }).click({ force: true });
  await expect(sentence).not.toHaveText(/^Start at 0\.40/);
  const start = page.getByRole('slider', { name: 'Start point' });
  await start.focus();
  const before = await sentence.textContent();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await expect(sentence).not.toHaveText(before ?? '');
  await expect(page.getByRole('radio', { name: 'By hand' })).toBeChecked();
});

test('the start point is dragged', async ({ page }) => {
  await page.getByRole('link', { name: 'Plan' }).click();
  const sentence = page.getByRole('heading', { level: 1 });
  await expect(sentence).toHaveText(/^Start at 0\.40/);
  const handle = page.getByText(/^Start point 0\.40/).locator('..');
  const box = await handle.boundingBox();
  if (!box) throw new Error('the handle has no box');
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2 + 60, box.y + box.height / 2, { steps: 6 });
  await page.mouse.up();
  await expect(sentence).toHaveText(/^Start at 0\.[5-9]/);
});

test('a number of the plan says where it comes from', async ({ page }) => {
  await page.getByRole('link', { name: 'Plan' }).click();
  await page.getByRole('button', { name: /Where from: Fluid needed at peak/ }).click();
  const panel = page.getByRole('dialog', { name: 'Where this number comes from' });
  await expect(panel).toContainText('q = ratio m_fuel / rho');
  await expect(panel.locator('math')).toBeVisible();
  await expect(panel).toContainText('common practice');
});

test.describe('with a gauge on its own scale', () => {
  test.use({ preferences: { units: imperialUnits } });

  test('a mixture is typed on the scale, says which, and is kept as lambda', async ({
    page,
    sessionFolder,
  }) => {
    await page.getByRole('link', { name: 'Setup' }).click();
    await page.getByRole('button', { name: 'Limits', exact: true }).click();
    const leanest = page.getByRole('textbox', { name: 'Leanest at full load' });
    await expect(leanest).toHaveValue('13.23');
    await expect(leanest).toHaveAccessibleDescription(/AFR \(14\.7\)/);
    await expect(page.getByRole('button', { name: /Unit of Leanest at full load/ })).toHaveCount(0);
    await leanest.fill('12.495');
    await expect(page.getByRole('button', { name: /^Undo/ })).toBeEnabled();
    const kept = () =>
      JSON.parse(readFileSync(join(sessionFolder, 'session.json'), 'utf8')).limits.leanestLambda;
    await expect.poll(kept).toBeCloseTo(0.85, 10);
  });

  test('no number of the setup has a tail of digits, and looking into a field changes nothing that is kept', async ({
    page,
    sessionFolder,
  }) => {
    const kept = () => readFileSync(join(sessionFolder, 'session.json'), 'utf8');
    const before = kept();
    await page.getByRole('link', { name: 'Setup' }).click();
    const sheets = page.getByRole('navigation', { name: 'Setup' });
    let numbers = 0;
    for (const sheet of ['Car', 'Air and place', 'Limits', 'Engine', 'Fluid target', 'Fluid system']) {
      await sheets.getByRole('button', { name: sheet, exact: true }).click();
      await expect(page.getByRole('main').getByRole('heading', { level: 1 })).toBeVisible();
      const fields = page.getByRole('main').locator('input[inputmode="decimal"]');
      await fields.first().waitFor();
      for (const field of await fields.all()) {
        await field.focus();
        const text = await field.inputValue();
        expect(text.replace(/^-?0\.0*|\D/g, '').length, `${sheet}: ${text}`).toBeLessThanOrEqual(5);
        numbers += text === '' ? 0 : 1;
      }
      await page.getByRole('main').focus();
    }
    expect(numbers).toBeGreaterThan(40);
    // The tank of the sample holds litres as they were typed.
    await expect(page.getByRole('textbox', { name: 'Tank', exact: true })).toHaveValue('1.06');
    await page.getByRole('link', { name: 'Plan' }).click();
    expect(kept()).toBe(before);
    await expect(page.getByRole('button', { name: /^Undo/ })).toBeDisabled();
  });
});
