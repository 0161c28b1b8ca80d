import type { Page } from 'playwright/test';
import { expect, test } from './support/workbench.ts';

async function openFluid(page: Page) {
  await page.getByRole('link', { name: 'Setup' }).click();
  await page.getByRole('button', { name: 'Fluid system', exact: true }).click();
}
const follows = (page: Page) => page.getByRole('complementary', { name: 'What follows' });

test('a hydrometer reading becomes the mix with one press, and undo takes it back', async ({ page }) => {
  await openFluid(page);
  await page.getByRole('textbox', { name: 'Reading', exact: true }).fill('0.9156');
  await page.getByRole('textbox', { name: 'Fluid temperature at the reading' }).fill('20');
  // CRC Handbook: 50 % methanol by mass has 0.9156 at 20 C.
  await expect(page.getByText(/^50\.0\s% ± 0\.\d\s% alcohol by mass/)).toBeVisible();
  await page.getByRole('button', { name: 'Use this strength' }).click();
  const methanol = page.getByRole('textbox', { name: 'Methanol', exact: true });
  await expect(methanol).toHaveValue('50');
  await expect(page.getByRole('button', { name: /^Mass Mixed|^Mixed Mass|Mass/ }).first()).toBeVisible();
  const undo = page.getByRole('button', { name: /^Undo/ });
  await expect(undo).toBeEnabled();
  await undo.click();
  await expect(page.getByRole('button', { name: /Volume as poured/ })).toBeVisible();
});

test('a list of points is typed, refused in words beside it, and mended', async ({ page }) => {
  await openFluid(page);
  const pump = page.getByRole('region', { name: 'Curve of the pump' });
  const cell = (name: string, n: number) => pump.getByRole('textbox', { name: `${name}, point ${n}` });
  await pump.getByRole('button', { name: 'Add a point' }).click();
  await cell('Pressure', 1).fill('4');
  await cell('Flow', 1).fill('1500');
  await pump.getByRole('button', { name: 'Add a point' }).click();
  await cell('Pressure', 2).fill('12');
  await cell('Flow', 2).fill('1600');
  await expect(pump.getByText(/against more pressure a pump delivers less/)).toBeVisible();
  await cell('Flow', 2).fill('300');
  await expect(pump.getByText(/delivers less/)).toHaveCount(0);
  await expect(follows(page).getByRole('button', { name: /Where from: Delivered at peak/ })).toBeVisible();
});

test('a share over 100 % is said beside its field, with what to do', async ({ page }) => {
  await openFluid(page);
  const field = page.getByRole('textbox', { name: 'Methanol', exact: true });
  await field.fill('120');
  const said = page.getByText(/The shares add up to 120\.0\s%: more than the whole\. Lower one of them/);
  await expect(said).toBeVisible();
  await field.fill('50');
  await expect(said).toHaveCount(0);
});

test('a pump weaker than boost is said beside its pressure', async ({ page }) => {
  await openFluid(page);
  const field = page.getByRole('textbox', { name: 'Set pressure', exact: true });
  await field.fill('0.5');
  await expect(
    page.getByText(/No fluid would arrive\. Use a stronger pump, raise its set pressure/),
  ).toBeVisible();
});

test('a start above the full point is said beside it', async ({ page }) => {
  await page.getByRole('link', { name: 'Setup' }).click();
  await page.getByRole('button', { name: 'Fluid target', exact: true }).click();
  await page.getByRole('textbox', { name: 'Start point' }).fill('1.2');
  await expect(
    page.getByText(
      /The start at 1\.20\sbar\sg is not below the full point at 1\.00\sbar\sg\. Set the start lower/,
    ),
  ).toBeVisible();
});

test('a negative nozzle flow and an empty list of nozzles are said at the list', async ({ page }) => {
  await openFluid(page);
  const list = page.getByRole('group', { name: 'Nozzles of your own' });
  await list.getByRole('textbox', { name: 'Rated flow' }).first().fill('-5');
  await expect(list.getByText(/a flow must be above zero\. Enter the flow/)).toBeVisible();
  for (let left = 4; left > 0; left--) await list.getByRole('button', { name: 'Remove' }).first().click();
  await expect(list.getByText(/The list of nozzles is empty.*Enter at least one nozzle/)).toBeVisible();
});

test('fuel injectors stand whole or not at all', async ({ page }) => {
  await page.getByRole('link', { name: 'Setup' }).click();
  await page.getByRole('button', { name: 'Engine', exact: true }).click();
  const group = page.getByRole('group', { name: 'Fuel injectors' });
  const flow = group.getByRole('textbox', { name: 'Flow of each' });
  await flow.fill('');
  await expect(group.getByRole('region', { name: 'Logged injector duty' })).toHaveCount(0);
  await flow.fill('500');
  await expect(group.getByRole('region', { name: 'Logged injector duty' })).toBeVisible();
});

test('fluid for one pull comes from the logs, and says so', async ({ page }) => {
  await openFluid(page);
  await expect(page.getByText(/The logs of this session show \d+\smL a pull, over \d+ pulls/)).toBeVisible();
  await page.getByRole('link', { name: 'Plan' }).click();
  await expect(page.getByText('from the logs', { exact: true })).toBeVisible();
});

test('each way, nozzle, reach and guard band says where its numbers come from', async ({ page }) => {
  await page.getByRole('link', { name: 'Plan' }).click();
  for (const what of [
    /^Start later, Mid-range lacks|Where from: Start later, Mid-range lacks/,
    /Where from: Full point beyond peak, Of need at peak/,
    /Where from: N180$/,
    /Where from: Pulls on a tank/,
    /Where from: Boost to fall back to/,
    /Where from: Flow, give or take/,
    /Where from: By the rule of thumb/,
    /Where from: Pressure across the nozzle/,
  ]) {
    await page.getByRole('button', { name: what }).first().click();
    const panel = page.getByRole('dialog', { name: 'Where this number comes from' });
    await expect(panel).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(panel).toHaveCount(0);
  }
});
