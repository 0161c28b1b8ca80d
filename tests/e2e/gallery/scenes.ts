import { tmpdir } from 'node:os';
import type { Page } from 'playwright/test';

/** One state of the workbench, found without words, so that it is the same in every language. */
export type Scene = {
  readonly name: string;
  readonly startsWith: 'sample' | 'nothing';
  readonly reach: (page: Page) => Promise<void>;
};

const key =
  (...keys: readonly string[]) =>
  async (page: Page): Promise<void> => {
    for (const one of keys) await page.keyboard.press(one);
  };

const inList =
  (screenKey: string, at: number) =>
  async (page: Page): Promise<void> => {
    await page.keyboard.press(screenKey);
    await page.locator('nav').nth(-1).getByRole('button').nth(at).click();
  };

const tab = (at: number) => (page: Page) => page.getByRole('tab').nth(at).click();

const scene = (name: string, reach: Scene['reach'], startsWith: Scene['startsWith'] = 'sample'): Scene => ({
  name,
  startsWith,
  reach,
});

/** The menu of the window: the last button of its head. */
const fromMenu = (at: number) => async (page: Page) => {
  await page.locator('header').first().getByRole('button').last().click();
  await page.getByRole('menuitem').nth(at).click();
  await page.getByRole('dialog').waitFor();
};

/** A button below one of the bench's tabs. */
const underTab = (tabAt: number, button: number) => async (page: Page) => {
  await tab(tabAt)(page);
  await page.getByRole('tabpanel').getByRole('button').nth(button).click();
  await page.getByRole('dialog').waitFor();
};

const setupSections = ['car', 'air', 'limits', 'engine', 'fluid-target', 'fluid-system', 'fit-review'];
const planSheets = ['fluid', 'ladder', 'mixture', 'heat', 'tables'];
const benchTabs = ['witnesses', 'pulls', 'channels', 'why', 'cells', 'notes'];

/** Every screen, sheet, tab and dialog. */
export const scenes: readonly Scene[] = [
  scene('start', async () => {}, 'nothing'),
  scene(
    'start-menu',
    async (page) => page.locator('header').first().getByRole('button').last().click(),
    'nothing',
  ),
  scene('dialog-new-session', fromMenu(6), 'nothing'),
  ...benchTabs.map((name, at) => scene(`bench-${name}`, tab(at))),
  scene('bench-gain', key('k', 'k', 'k')),
  scene('bench-pinned', key('k', 'k', 'k', 'k', 'p', 'j', 'p')),
  scene('bench-quick-note', key('n')),
  scene('bench-baseline', key('k', 'k', 'k', 'k', 'k', 'k', 'k')),
  ...setupSections.map((name, at) => scene(`setup-${name}`, inList('1', at))),
  ...planSheets.map((name, at) => scene(`plan-${name}`, inList('2', at))),
  scene('ride', key('4')),
  scene('handover', key('5')),
  scene('dialog-keys', key('?')),
  scene('dialog-palette', key('Control+k')),
  scene('dialog-units', key('u')),
  scene('dialog-watch', key('f')),
  scene('dialog-import-path', key('Shift+I')),
  scene('dialog-history', async (page) => {
    await key('d', 'h')(page);
    await page.getByRole('article').waitFor();
  }),
  scene('bench-watching', async (page) => {
    await page.keyboard.press('f');
    await page.getByRole('textbox').fill(tmpdir());
    await page.keyboard.press('Enter');
  }),
  scene('dialog-open-folder', key('o')),
  scene('dialog-leaning', key('l')),
  scene('dialog-decide', async (page) => {
    await page.getByRole('tab').first().waitFor();
    await page.keyboard.press('w');
    await page.getByRole('dialog').waitFor();
  }),
  scene('dialog-unpack', fromMenu(8)),
  scene('dialog-pack', fromMenu(9)),
  scene('dialog-merge', fromMenu(10)),
  scene('dialog-derived', underTab(2, 0)),
  scene('dialog-columns', underTab(1, -1)),
  scene('dialog-add-entry', key('a')),
  scene('dialog-edit-entry', key('e')),
];
