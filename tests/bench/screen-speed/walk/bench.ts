import type { Page } from 'playwright';
import type { Action } from '../interactions.ts';
import { button, choice, click, dialog, field, key, typing } from './steps.ts';

const tab = (name: string) => click(`tab ${name}`, (page) => page.getByRole('tab', { name }));
const ledger = (page: Page) => page.getByRole('navigation', { name: 'Ledger' });
const entry = (name: RegExp) => (page: Page) => ledger(page).getByRole('button', { name });
const panel = (page: Page) => page.getByRole('tabpanel');
const inDialog = (name: string) => (page: Page) =>
  page.getByRole('dialog').getByRole('button', { name, exact: true });

/** Entries, the reading line, every tab, pulls left out and pinned, notes, undo. */
export const benchWalk: readonly Action[] = [
  key('previous entry (K)', 'k'),
  key('previous entry (K), 2nd', 'k'),
  key('next entry (J)', 'j'),
  click('choose an entry', entry(/^2 Boost/)),
  {
    name: 'choose what stands before',
    run: (page) =>
      entry(/^0 Baseline/)(page).click({
        modifiers: ['Shift'],
      }),
  },
  key('another before (Shift+J)', 'Shift+J'),
  key('pin the last pull (P)', 'p'),
  key('unpin (Shift+P)', 'Shift+P'),
  {
    name: 'reading line',
    before: (page) => page.getByRole('slider').first().focus(),
    run: (page) => page.keyboard.press('ArrowRight'),
  },
  {
    name: 'pointer over the plot',
    run: async (page) => {
      const box = await page.getByRole('img', { name: /after/ }).boundingBox();
      if (box) await page.mouse.move(box.x + box.width * 0.4, box.y + box.height * 0.4, { steps: 5 });
    },
  },
  tab('Pulls'),
  click('leave out a pull, ask', (page) =>
    panel(page).getByRole('button', { name: 'Leave out', exact: true }).first(),
  ),
  choice('leave out a pull, reason', (page) => page.getByRole('radio', { name: 'wheelspin' })),
  click('leave out a pull, done', inDialog('Leave out')),
  key('undo (Ctrl+Z)', 'Control+z'),
  key('redo (Ctrl+Shift+Z)', 'Control+Shift+Z'),
  click('undo (button)', button(/^Undo/)),
  click('trim a pull, ask', (page) => panel(page).getByRole('button', { name: 'Trim pull 1' }).first()),
  key('close trim', 'Escape'),
  click('columns of a log', button(/^Columns of /)),
  key('close columns', 'Escape'),
  tab('Channels'),
  click('choose a channel', button('Fluid flow')),
  click('pin a pull', (page) => page.getByRole('button', { name: /^Keep .* in view$/ }).first()),
  {
    name: 'reading line of channels',
    before: (page) => panel(page).getByRole('slider').focus(),
    run: (page) => page.keyboard.press('ArrowRight'),
  },
  key('zoom the channels (+)', '+'),
  key('all of the channels (0)', '0'),
  choice('channels over time', (page) => page.getByRole('radio', { name: 'Time of the pull' })),
  click('derived channels', button('Derived channels')),
  key('close derived channels', 'Escape'),
  tab('Why'),
  tab('Notes'),
  typing('type a note', field('Note on this entry'), 'fan on'),
  click('leave the note', (page) => page.getByRole('tab', { name: 'Notes' })),
  click('undo the note', button(/^Undo/)),
  tab('Witnesses'),
  {
    name: 'quick note (N)',
    run: (page) => page.keyboard.press('n'),
    after: (page) => page.getByRole('textbox', { name: /^Note on entry \d/ }).waitFor(),
  },
  { name: 'quick note, typed', run: (page) => page.keyboard.type('windy', { delay: 130 }) },
  key('quick note, kept', 'Enter'),
  click('undo the quick note', button(/^Undo/)),
  key('drop the entry (D)', 'd'),
  click('undo dropping it', button(/^Undo/)),
  ...dialog('what would decide it', 'w').map((action) => ({
    ...action,
    ...(action.name.startsWith('open') ? { before: (page: Page) => entry(/^5 Spark/)(page).click() } : {}),
  })),
];
