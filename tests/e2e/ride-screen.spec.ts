import { appendFileSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright/test';
import { expect, test } from './support/workbench.ts';

const looseLogs = join(import.meta.dirname, '../../sample-sessions/loose-logs');

type Seen = { readonly calls: string[]; readonly tones: number[] };

/** Doubles of what a browser has only on a real screen; `gives` false is one that is locked down. */
async function withDoubles(page: Page, gives: boolean): Promise<() => Promise<Seen>> {
  await page.addInitScript((isGiving) => {
    const calls: string[] = [];
    const tones: number[] = [];
    let full: Element | null = null;
    const set = (element: Element | null) => {
      full = element;
      document.dispatchEvent(new Event('fullscreenchange'));
    };
    Object.defineProperty(Document.prototype, 'fullscreenElement', { get: () => full });
    Element.prototype.requestFullscreen = async function fill() {
      if (!isGiving) throw new TypeError('Permissions check failed');
      calls.push('full');
      set(this);
    };
    Document.prototype.exitFullscreen = async () => {
      calls.push('window');
      set(null);
    };
    const request = async () => {
      if (!isGiving) throw new DOMException('denied', 'NotAllowedError');
      calls.push('lit');
      return { release: async () => void calls.push('may go dark') };
    };
    Object.defineProperty(navigator, 'wakeLock', { value: { request } });
    const param = () => ({ value: 0, setValueAtTime() {}, linearRampToValueAtTime() {} });
    const node = () => ({ connect: (next: unknown) => next, gain: param() });
    class Sound {
      currentTime = 0;
      state = 'running';
      destination = {};
      constructor() {
        if (!isGiving) throw new DOMException('denied', 'NotAllowedError');
      }
      createGain = node;
      createOscillator = () => ({
        ...node(),
        frequency: {
          set value(hertz: number) {
            tones.push(hertz);
          },
        },
        start() {},
        stop() {},
      });
    }
    Object.assign(window, { AudioContext: Sound, seen: { calls, tones } });
  }, gives);
  await page.reload();
  await page.getByRole('heading', { level: 1 }).waitFor();
  return () => page.evaluate(() => (window as unknown as { seen: Seen }).seen);
}

async function ask(page: Page, request: string, input: unknown): Promise<void> {
  const isDone = await page.evaluate(
    async ([name, sent]) => {
      const headers = { 'content-type': 'application/json' };
      const body = JSON.stringify({ input: sent });
      return (await fetch(`api/${name}`, { method: 'POST', headers, body })).ok;
    },
    [request, input] as const,
  );
  expect(isDone).toBe(true);
}

const ride = (page: Page) => page.getByRole('main', { name: 'Ride' });

/** No log of the sample passes with these. */
const strictLimits = {
  type: 'limits.set',
  limits: {
    margin_percent: 1,
    leanestLambda: 0.7,
    injectorDuty_percent: 85,
    intake_C: 60,
    exhaust_C: 950,
    knockEvents: 1,
    mapCeiling_kPa: null,
    boostCeiling_kPa: null,
    fluidPressureLowest_kPa: null,
  },
};

test.use({ viewport: { width: 1366, height: 768 }, preferences: { theme: 'night', rideSound: true } });

test('the view fills the screen, keeps it lit, and gives both back on the way out', async ({ page }) => {
  const seen = await withDoubles(page, true);
  await page.keyboard.press('4');
  await expect(ride(page)).toBeVisible();
  await expect.poll(async () => (await seen()).calls.toSorted()).toEqual(['full', 'lit']);
  await page.keyboard.press('Escape');
  await expect(ride(page)).toBeHidden();
  await expect.poll(async () => (await seen()).calls.slice(2).toSorted()).toEqual(['may go dark', 'window']);
});

test('the browser’s own key for leaving full screen leads to the bench as Escape does', async ({ page }) => {
  const seen = await withDoubles(page, true);
  await page.keyboard.press('4');
  await expect.poll(async () => (await seen()).calls).toContain('full');
  await page.evaluate(() => document.exitFullscreen());
  await expect(ride(page)).toBeHidden();
  await expect(page.getByRole('navigation', { name: 'Ledger' })).toBeVisible();
});

test('a browser that is locked down refuses all of it: the view says so and works', async ({ page }) => {
  await withDoubles(page, false);
  await page.keyboard.press('4');
  await expect(page.getByText(/Full screen was refused\. The screen may go dark/)).toBeVisible();
  await expect(page.getByRole('term').filter({ hasText: 'Leanest mixture' })).toBeVisible();
  await expect(page.getByText('The last pull counts')).toBeVisible();
  await ask(page, 'session.edit', { edits: [strictLimits] });
  await expect(page.getByText('The browser lets no sound out.')).toBeVisible({ timeout: 90_000 });
  await page.keyboard.press('Space');
  await expect(page.getByText('Last pull marked bad')).toBeVisible();
  const isCut = await ride(page).evaluate((main) => main.scrollHeight > main.clientHeight);
  expect(isCut).toBe(false);
  await page.keyboard.press('Escape');
  await expect(ride(page)).toBeHidden();
});

test('a closed gate is heard as falling tones, and nothing is heard with sound off', async ({ page }) => {
  const seen = await withDoubles(page, true);
  await page.keyboard.press('4');
  await expect(page.getByText(/^Next: /)).toBeVisible();
  // What nobody has to hear stays silent.
  await ask(page, 'session.edit', { edits: [{ type: 'session.note', note: 'windy' }] });
  await ask(page, 'session.edit', { edits: [strictLimits] });
  await expect.poll(async () => (await seen()).tones).toEqual([880, 440, 880, 440]);
  await page.getByRole('button', { name: 'Sound on' }).click();
  await ask(page, 'session.edit', {
    edits: [{ ...strictLimits, limits: { ...strictLimits.limits, injectorDuty_percent: 40 } }],
  });
  await expect(page.getByRole('status').last()).toHaveText(/Injectors: /);
  expect((await seen()).tones).toHaveLength(4);
});

test.describe('while a logger writes', () => {
  let logger: string;
  test.beforeEach(() => {
    logger = mkdtempSync(join(tmpdir(), 'onechange-logger-'));
  });
  test.afterEach(() => rmSync(logger, { recursive: true, force: true }));

  test('the log is followed in the passenger’s sight, and its pull wakes the view', async ({ page }) => {
    const seen = await withDoubles(page, true);
    await page.keyboard.press('4');
    await expect(page.getByText('No folder is watched: no pull comes in by itself.')).toBeVisible();
    await ask(page, 'watch.start', { folder: logger, follows: true });
    await expect(page.getByText('No folder is watched')).toBeHidden();
    const lines = readFileSync(join(looseLogs, 'after-1.10-bar.csv'), 'utf8').split('\n');
    const file = join(logger, 'pull 7.csv');
    const following = page.getByText(/^pull 7\.csv is being written: \d+\ss, (no full pull|\d+ pulls?)$/);
    // A logger flushes as it goes: a few rows at a time until the passenger has seen it.
    const rows = Math.ceil(lines.length / 60);
    let written = 0;
    while (written < lines.length - rows && !(await following.isVisible())) {
      appendFileSync(file, `${lines.slice(written, written + rows).join('\n')}\n`);
      written += rows;
      await page.waitForTimeout(300);
    }
    await expect(following).toBeVisible();
    appendFileSync(file, lines.slice(written).join('\n'));
    await expect(page.getByRole('status').last()).toHaveText(/New pull/);
    await expect.poll(async () => (await seen()).tones.slice(-2)).toEqual([660, 880]);
    await expect(page.getByText(/is being written/)).toBeHidden();
  });
});
