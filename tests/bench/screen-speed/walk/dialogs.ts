import type { Page } from 'playwright';
import type { Action } from '../interactions.ts';
import { choice, dialog, key } from './steps.ts';

/** By name in the palette: opened, typed, run. */
const byName = (name: string, typed: string): readonly Action[] => [
  {
    name: `${name}: type in the palette`,
    before: async (page: Page) => {
      await page.keyboard.press('Control+k');
      await page.getByRole('dialog').waitFor();
    },
    run: (page) => page.keyboard.type(typed, { delay: 130 }),
  },
  key(name, 'Enter'),
];

const [openUnits, closeUnits] = dialog('units', 'u');

/** Dialogs by key, the palette, light, language and units. */
export const dialogWalk: readonly Action[] = [
  ...dialog('keys', '?'),
  ...dialog('palette', 'Control+k'),
  ...dialog('history', 'h'),
  ...dialog('watch', 'f'),
  ...dialog('new entry', 'a'),
  ...dialog('edit entry', 'e'),
  ...dialog('open a folder', 'o'),
  ...dialog('import from a path', 'Shift+I'),
  ...(openUnits && closeUnits
    ? [
        openUnits,
        choice('imperial units', (page) => page.getByRole('radio', { name: 'Imperial' })),
        choice('metric units', (page) => page.getByRole('radio', { name: 'Metric' })),
        closeUnits,
      ]
    : []),
  ...byName('by night', 'night'),
  ...byName('by day', 'day'),
  ...byName('in German', 'deutsch'),
  ...byName('in English', 'english'),
];
