import { chromium } from 'playwright';
import { expect, it } from 'vitest';
import { turnedOff } from '../../e2e/support/turned-off.ts';

it('the browser of the end-to-end tests does without all that Playwright turns off', async () => {
  // Node is no browser: it refuses the switches, and Playwright says with which ones it was started.
  const refused = await chromium.launch({ executablePath: process.execPath }).then(
    () => '',
    (error: Error) => error.message,
  );
  const list = /--disable-features=(\S+)/.exec(refused)?.[1]?.split(',') ?? [];
  expect(list.length).toBeGreaterThan(0);
  expect(turnedOff).toEqual(expect.arrayContaining(list));
});
