import type { Locator, Page } from 'playwright';
import type { Action } from '../interactions.ts';

type Find = (page: Page) => Locator;

export const key = (name: string, pressed: string, before?: Action['before']): Action => ({
  name,
  run: (page) => page.keyboard.press(pressed),
  ...(before ? { before } : {}),
});

export const click = (name: string, find: Find, before?: Action['before']): Action => ({
  name,
  run: (page) => find(page).click(),
  ...(before ? { before } : {}),
});

/** The box of a choice is drawn over the input that takes the click. */
export const choice = (name: string, find: Find): Action => ({
  name,
  run: (page) => find(page).click({ force: true }),
});

/** Opened, looked at, closed: by its key and by Escape. */
export const dialog = (name: string, pressed: string): readonly Action[] => [
  {
    name: `open ${name}`,
    run: (page) => page.keyboard.press(pressed),
    after: (page) => page.getByRole('dialog').waitFor(),
  },
  {
    name: `close ${name}`,
    run: (page) => page.keyboard.press('Escape'),
    after: (page) => page.getByRole('dialog').waitFor({ state: 'hidden' }),
  },
];

/** With the pauses of quick fingers, at the end of what stands in the field. */
export const typing = (name: string, find: Find, typed: string): Action => ({
  name,
  before: async (page) => {
    await find(page).focus();
    await page.keyboard.press('End');
  },
  run: (page) => page.keyboard.type(typed, { delay: 130 }),
});

export const field = (name: string): Find => {
  return (page) => page.getByRole('textbox', { name, exact: true });
};
export const button = (name: string | RegExp): Find => {
  return (page) => page.getByRole('button', { name, exact: true }).first();
};
export const inList = (list: string, name: string): Action =>
  click(`${list}: ${name}`, (page) =>
    page.getByRole('navigation', { name: list }).getByRole('button', { name, exact: true }),
  );
export const toScreen = (name: string): Action =>
  click(`to ${name.toLowerCase()}`, (page) => page.getByRole('link', { name, exact: true }));

/** A list that drops down: opened, and one of its options taken. */
export const picked = (name: string, opens: string | RegExp, option: string | RegExp): readonly Action[] => [
  click(`open ${name}`, button(opens)),
  click(`choose ${name}`, (page) => page.getByRole('option', { name: option })),
];
