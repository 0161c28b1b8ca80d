import type { Page } from 'playwright';
import type { Action } from './interactions.ts';

const key = (name: string, pressed: string): Action => ({
  name,
  run: (page) => page.keyboard.press(pressed),
});
const click = (name: string, find: (page: Page) => ReturnType<Page['locator']>): Action => ({
  name,
  run: (page) => find(page).click(),
});
const dialog = (name: string, pressed: string): readonly Action[] => [
  key(`open ${name}`, pressed),
  key(`close ${name}`, 'Escape'),
];
const tab = (name: string) => click(`tab ${name}`, (page) => page.getByRole('tab', { name }));
const inList = (list: string, name: string) =>
  click(`${list}: ${name}`, (page) =>
    page.getByRole('navigation', { name: list }).getByRole('button', { name, exact: true }),
  );
const typing = (name: string, field: string, typed: string): Action => ({
  name,
  run: async (page) => {
    await page.getByRole('textbox', { name: field, exact: true }).focus();
    await page.keyboard.press('End');
    await page.keyboard.type(typed, { delay: 120 });
  },
});

/** Through all screens, sheets, tabs and common dialogs of the sample, by keys and clicks. */
export const walk: readonly Action[] = [
  key('previous entry (K)', 'k'),
  key('previous entry (K), 2nd', 'k'),
  key('next entry (J)', 'j'),
  click('choose an entry', (page) =>
    page.getByRole('navigation', { name: 'Ledger' }).getByRole('button', { name: /^2 Boost/ }),
  ),
  { name: 'reading line', run: (page) => page.getByRole('slider').first().press('ArrowRight') },
  tab('Pulls'),
  tab('Channels'),
  click('choose a channel', (page) => page.getByRole('button', { name: 'Fluid flow' })),
  click('pin a pull', (page) => page.getByRole('button', { name: /^Keep .* in view$/ }).first()),
  {
    name: 'reading line of channels',
    run: (page) => page.getByRole('tabpanel').getByRole('slider').press('ArrowRight'),
  },
  tab('Why'),
  tab('Notes'),
  typing('type a note', 'Note on this entry', 'fan'),
  { name: 'leave the note', run: (page) => page.getByRole('tab', { name: 'Notes' }).click() },
  ...dialog('keys', '?'),
  ...dialog('palette', 'Control+k'),
  ...dialog('units', 'u'),
  ...dialog('new entry', 'a'),
  ...dialog('edit entry', 'e'),
  ...dialog('history', 'h'),
  ...dialog('watch', 'f'),
  ...dialog('what would decide it', 'w'),
  key('to setup', '1'),
  ...['Air and place', 'Limits', 'Engine', 'Fluid target', 'Fluid system', 'Fit review', 'Car'].map((s) =>
    inList('Setup', s),
  ),
  inList('Setup', 'Engine'),
  typing('type a number of the setup', 'Target power at the crank', '.4'),
  key('leave the field', 'Tab'),
  click('to plan', (page) => page.getByRole('link', { name: 'Plan' })),
  {
    name: 'move the start point',
    run: (page) => page.getByRole('slider', { name: 'Start point' }).press('ArrowRight'),
  },
  click('where a number comes from', (page) => page.getByRole('button', { name: /^Where from:/ }).first()),
  key('close where from', 'Escape'),
  ...['Ladder', 'Mixture', 'Heat', 'Tables'].map((s) => inList('Plan', s)),
  click('to handover', (page) => page.getByRole('link', { name: 'Handover' })),
  click('to ride', (page) => page.getByRole('link', { name: 'Ride' })),
  key('mark bad', 'Space'),
  key('undo the mark', 'Backspace'),
  key('leave ride', 'Escape'),
];
