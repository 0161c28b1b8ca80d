import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright/test';
import { openSession } from '../../../electron/store/index.ts';
import { rolledLog } from '../../support/rolled-log.ts';

const looseLog = join(import.meta.dirname, '../../../sample-sessions/loose-logs/before-1.00-bar.csv');

/** One state of the workbench, found without words, so that it is the same in every language. */
export type Scene = {
  readonly name: string;
  readonly startsWith: 'sample' | 'nothing' | 'many-pulls';
  readonly reach: (page: Page) => Promise<void>;
  /** What happened to the session's folder before it is opened. */
  readonly prepare?: (folder: string) => Promise<unknown>;
};

const key =
  (...keys: readonly string[]) =>
  async (page: Page): Promise<void> => {
    for (const one of keys) await page.keyboard.press(one);
  };

const inList =
  (screenKey: string, at: number) =>
  async (page: Page): Promise<void> => {
    const ledger = await page.locator('nav').nth(-1).getAttribute('aria-label');
    await page.keyboard.press(screenKey);
    // The screen follows behind the paint of the key.
    await page.locator(`nav:not([aria-label="${ledger}"])`).nth(1).getByRole('button').nth(at).click();
  };

const tab = (at: number) => (page: Page) => page.getByRole('tab').nth(at).click();

const scene = (name: string, reach: Scene['reach'], startsWith: Scene['startsWith'] = 'sample'): Scene => ({
  name,
  startsWith,
  reach,
});

const importPath = (path: string) => async (page: Page) => {
  await page.keyboard.press('Shift+I');
  await page.getByRole('dialog').getByRole('textbox').fill(path);
  const main = page.getByRole('dialog').locator('footer').getByRole('button').first();
  await main.click();
  // The next dialog asks where the log belongs.
  await page
    .getByRole('dialog')
    .getByText(path.split('/').at(-1) ?? '')
    .waitFor();
  await main.click();
};

/** A log of many hours, so that its reading can be seen. */
function longLog(): string {
  const [head = '', ...rows] = readFileSync(looseLog, 'utf8').split('\n').slice(0, -1);
  const path = join(mkdtempSync(join(tmpdir(), 'onechange-long-')), 'a-long-day.csv');
  writeFileSync(path, [head, ...Array.from({ length: 300 }, () => rows.join('\n'))].join('\n'));
  return path;
}

/** Rolls in neutral, as an imported log that stands in no entry. */
const withRolls = (logs: Readonly<Record<string, string>>) => async (page: Page) => {
  const folder = mkdtempSync(join(tmpdir(), 'onechange-rolls-'));
  for (const [name, text] of Object.entries(logs)) {
    const path = join(folder, name);
    writeFileSync(path, text);
    await importPath(path)(page);
    await page.getByRole('dialog').waitFor({ state: 'detached' });
  }
  await page.keyboard.press('1');
  await page.getByRole('radio').first().waitFor();
  const ways = page.locator('main section [aria-haspopup]').first();
  await ways.press('ArrowRight');
  await ways.press('ArrowRight');
  await page.locator('main section li').first().waitFor();
  await page.locator('main section h3').scrollIntoViewIfNeeded();
};
const rollsOfOne = withRolls({ 'rolls-after-noon.csv': rolledLog({ rolls: 4 }) });
/** A logger that begins a new file with each roll, on a day when wind came up. */
const rollsOfFour = withRolls({
  'roll-1-out.csv': rolledLog({ ways: [1] }),
  'roll-2-back.csv': rolledLog({ ways: [-1] }),
  'roll-3-out-after-the-wind-came-up.csv': rolledLog({ ways: [1], wind: 2 }),
  'roll-4-back-after-the-wind-came-up.csv': rolledLog({ ways: [-1], wind: 2 }),
});

const newSession = async (page: Page) => {
  await fromMenu(6)(page);
  await page.getByRole('dialog').getByRole('textbox').first().fill('1420');
  await page.keyboard.press('Enter');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
};

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

/** What a long sheet holds further down: every part of the window at its end. */
const below = (reach: Scene['reach']) => async (page: Page) => {
  await reach(page);
  await page.waitForTimeout(600);
  await page.evaluate(() => {
    for (const part of document.querySelectorAll('main, main ~ aside, aside, main section')) {
      part.scrollTop = part.scrollHeight;
    }
  });
};

/** A number of the sheet beside the screen, asked where it comes from. */
const whereFrom = async (page: Page) => {
  await page.locator('aside').getByRole('button').first().click();
  await page.getByRole('dialog').waitFor();
};

const rowMenu = async (page: Page) => {
  const row = page.locator('nav').nth(-1).getByRole('listitem').nth(2);
  await row.hover();
  await row.getByRole('button').last().click();
  await page.getByRole('menu').waitFor();
};

/** A row of the table of pulls: its last but one button trims, its last leaves out. */
const ofPull = (button: number) => async (page: Page) => {
  await tab(1)(page);
  await page.getByRole('tabpanel').getByRole('row').nth(2).getByRole('button').nth(button).click();
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
  scene('setup-coast-down', rollsOfOne),
  scene('setup-coast-down-below', below(rollsOfOne)),
  scene('setup-coast-down-logs', rollsOfFour),
  scene('setup-car-below', below(inList('1', 0))),
  ...planSheets.map((name, at) => scene(`plan-${name}`, inList('2', at))),
  ...(['engine', 'fluid-system', 'fit-review'] as const).map((name) =>
    scene(`setup-${name}-below`, below(inList('1', setupSections.indexOf(name)))),
  ),
  ...(['fluid', 'ladder', 'mixture'] as const).map((name) =>
    scene(`plan-${name}-below`, below(inList('2', planSheets.indexOf(name)))),
  ),
  scene('plan-tables-held', async (page) => {
    await inList('2', 4)(page);
    await page.locator('[data-cell="13,4"]').click();
    for (let i = 0; i < 3; i++) await page.keyboard.press('-');
    await page.locator('main [role="status"] p').waitFor();
  }),
  scene('plan-tables-chosen', async (page) => {
    await inList('2', 4)(page);
    await page.locator('main ~ aside').getByRole('button').first().click();
  }),
  scene('bench-channels-below', below(tab(2))),
  scene('bench-pulls-below', below(tab(1))),
  scene('bench-row-menu', rowMenu),
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
  scene('dialog-derived', async (page) => {
    await tab(2)(page);
    await page.getByRole('tabpanel').locator('[aria-haspopup="dialog"]').click();
    await page.getByRole('dialog').waitFor();
  }),
  scene('dialog-unsaved', async (page) => {
    await tab(2)(page);
    await page.getByRole('tabpanel').locator('[aria-haspopup="dialog"]').click();
    await page
      .getByRole('dialog')
      .getByRole('button', { name: /^(Mixture, smoothed|Gemisch, geglättet)$/ })
      .click();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').nth(1).waitFor();
  }),
  scene('dialog-columns', underTab(1, -1)),
  scene('dialog-trim-pull', ofPull(-2)),
  scene('dialog-leave-out-pull', ofPull(-1)),
  scene('dialog-where-from', async (page) => {
    await inList('1', 3)(page);
    await whereFrom(page);
  }),
  scene('dialog-read-table', async (page) => {
    await inList('2', 4)(page);
    await page.locator('main').getByRole('button').first().click();
    await page.getByRole('dialog').waitFor();
  }),
  scene('dialog-assign-log', async (page) => {
    await page.keyboard.press('Shift+I');
    await page.getByRole('dialog').getByRole('textbox').fill(looseLog);
    await page.getByRole('dialog').locator('footer').getByRole('button').first().click();
    await page
      .getByRole('dialog')
      .getByText(looseLog.split('/').at(-1) ?? '')
      .waitFor();
  }),
  scene('dialog-add-entry', key('a')),
  scene('dialog-edit-entry', key('e')),
  scene('state-new-session', newSession, 'nothing'),
  scene(
    'state-new-session-plan',
    async (page) => {
      await newSession(page);
      await page.keyboard.press('2');
    },
    'nothing',
  ),
  scene(
    'state-new-session-ride',
    async (page) => {
      await newSession(page);
      await page.keyboard.press('4');
    },
    'nothing',
  ),
  scene(
    'state-new-session-handover',
    async (page) => {
      await newSession(page);
      await page.keyboard.press('5');
    },
    'nothing',
  ),
  scene('state-log-refused', async (page) => {
    await importPath(join(import.meta.dirname, '../../../package.json'))(page);
    // The refusal is told at the foot of the window.
    await page.getByRole('alert').waitFor();
  }),
  scene('state-importing', (page) => importPath(longLog())(page)),
  {
    ...scene('state-read-only', async () => {}),
    prepare: (folder) => openSession(folder, { now: new Date().toISOString() }),
  },
  {
    ...scene('state-damaged', async () => {}),
    prepare: async (folder) => {
      writeFileSync(join(folder, 'session.json'), '{"schemaVersion":');
    },
  },
  scene('state-24-pulls', key('k', 'k'), 'many-pulls'),
  {
    ...scene('state-gate-closed', async () => {}),
    prepare: async (folder) => {
      const path = join(folder, 'session.json');
      const session = JSON.parse(readFileSync(path, 'utf8'));
      session.limits.boostCeiling_kPa = 110;
      writeFileSync(path, JSON.stringify(session));
    },
  },
];
