import type { Page } from 'playwright';
import type { Action } from '../interactions.ts';
import { button, choice, click, field, inList, key, picked, toScreen, typing } from './steps.ts';

const section = (name: string) => inList('Setup', name);
const typed = (name: string, text: string, exact = true): readonly Action[] => [
  typing(`type: ${name}`, (page) => page.getByRole('textbox', { name, exact }), text),
  key(`leave: ${name}`, 'Tab'),
];

/** Every section of the setup, its kinds of fields, and undo. */
export const setupWalk: readonly Action[] = [
  key('to setup', '1'),
  ...typed('Mass as driven', '.5'),
  ...typed('Tyre', ' 94'),
  ...typed('Gear ratios', '1'),
  section('Air and place'),
  ...typed('Air temperature', '.5'),
  section('Limits'),
  ...typed('Exhaust gas', '.5'),
  section('Engine'),
  ...typed('Target power at the crank', '.4'),
  ...typed('Displacement', '1'),
  ...picked('a unit', /Unit of Peak boost/, /^psi/),
  ...picked('the compressor', /Compressor$/, 'Centrifugal'),
  section('Fluid target'),
  // A field that stands at its default says so in its label.
  ...typed('Least that is usual', '.5', false),
  section('Fluid system'),
  ...typed('Set pressure', '5'),
  ...typed('Methanol', '.5'),
  click('add a point of the pump', (page) =>
    page.getByRole('region', { name: 'Curve of the pump' }).getByRole('button', { name: 'Add a point' }),
  ),
  click('undo the point', button(/^Undo/)),
  section('Fit review'),
  section('Car'),
];

const slider = (name: string) => ({
  before: (page: Page) => page.getByRole('slider', { name }).focus(),
});

/** The plan's sheets, the handles of its curve, where a number comes from. */
export const planWalk: readonly Action[] = [
  toScreen('Plan'),
  key('move the start point', 'ArrowRight', slider('Start point').before),
  key('move the start point, 2nd', 'ArrowRight'),
  key('move the full point', 'ArrowLeft', slider('Full point').before),
  {
    name: 'drag the start point',
    run: async (page) => {
      const box = await page
        .getByText(/^Start point/)
        .locator('..')
        .boundingBox();
      if (!box) throw new Error('the handle has no box');
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      await page.mouse.move(x, y);
      await page.mouse.down();
      for (let i = 1; i <= 6; i++) {
        await page.mouse.move(x + 8 * i, y);
        await page.waitForTimeout(60);
      }
      await page.mouse.up();
    },
  },
  choice('another way to feed', (page) => page.getByRole('radio', { name: /^Start later/ })),
  typing('type: power on the plan', field('Target power at the crank'), '.5'),
  key('leave: power on the plan', 'Tab'),
  click('where a number comes from', button(/Where from: Fluid needed at peak/)),
  key('close where from', 'Escape'),
  inList('Plan', 'Ladder'),
  choice('ladder on a dyno', (page) => page.getByRole('radio', { name: 'Dyno' })),
  click('choose a step', (page) =>
    page
      .getByRole('table')
      .first()
      .getByRole('button', { name: /^Spark \+/ })
      .first(),
  ),
  inList('Plan', 'Mixture'),
  inList('Plan', 'Heat'),
  inList('Plan', 'Fluid and injection'),
];

/** A table of the engine control: moved in, chosen in, typed in, stepped. */
export const tablesWalk: readonly Action[] = [
  inList('Plan', 'Tables'),
  key('move in the table', 'PageDown', (page) => page.locator('[data-cell="0,0"]').focus()),
  key('choose a block', 'Shift+ArrowRight'),
  { name: 'type into a cell', run: (page) => page.keyboard.type('9', { delay: 130 }) },
  key('keep the cell', 'Enter'),
  click('undo the cell', button(/^Undo/)),
  click('cells the spray covers', button('Cells the spray covers')),
  choice('smooth edge', (page) => page.getByRole('radio', { name: '1', exact: true })),
  typing('type the step', field('Step, °'), '5'),
  click('difference of the table', (page) => page.getByText('Difference', { exact: true })),
  click('read a table', button('Read a table')),
  key('close reading', 'Escape'),
];

/** What the customer gets: every choice writes the preview anew. */
export const handoverWalk: readonly Action[] = [
  toScreen('Handover'),
  ...['Deutsch', 'One page', 'Letter'].map((name) =>
    click(`${name} for the customer`, (page) => page.getByText(name, { exact: true })),
  ),
  ...picked('units of the customer', /Units of the customer/, 'Imperial, hp'),
  typing('type the customer', field('Customer'), 'A. Example'),
  key('leave the customer', 'Tab'),
  click('leave a change off the sheet', (page) => page.getByText(/^2 · /)),
];

/** The passenger's three keys. */
export const rideWalk: readonly Action[] = [
  toScreen('Ride'),
  key('mark bad', 'Space'),
  key('undo the mark', 'Backspace'),
  key('leave ride', 'Escape'),
];
