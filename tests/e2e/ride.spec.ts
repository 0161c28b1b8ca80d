import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright/test';
import type { Session, SessionEdit } from '../../core/session/index.ts';
import { seriousFindings } from './support/serious-findings.ts';
import { expect, test } from './support/workbench.ts';

/** What happens elsewhere while the passenger looks on. */
async function editElsewhere(page: Page, edit: SessionEdit): Promise<void> {
  const isDone = await page.evaluate(async (one) => {
    const answer = await fetch('api/session.edit', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ input: { edits: [one] } }),
    });
    return answer.ok;
  }, edit);
  expect(isDone).toBe(true);
}

test.use({ viewport: { width: 1366, height: 768 }, preferences: { theme: 'night' } });

test.beforeEach(async ({ page, sessionFolder }) => {
  await page.getByRole('heading', { level: 1 }).waitFor();
  // The newest of the sample is not comparable; the one before it has an effect to show.
  const { ledger } = JSON.parse(readFileSync(join(sessionFolder, 'session.json'), 'utf8')) as Session;
  const newest = ledger.at(-1);
  for (const { runId } of newest?.runs ?? []) {
    await editElsewhere(page, { type: 'entry.leaveRun', entryId: newest?.id ?? '', runId });
  }
  await page.keyboard.press('4');
  await expect(page.getByRole('main', { name: 'Ride' })).toBeVisible();
  await expect(page.getByText('give or take')).toBeVisible();
});

test('the passenger reads effect, gates and next step in large type, and nothing is cut off', async ({
  page,
}) => {
  await expect(page.getByText('The driver never works this.')).toBeVisible();
  for (const gate of ['Knock', 'Leanest mixture', 'Intake air', 'Injectors', 'Fluid left']) {
    await expect(page.getByRole('term').filter({ hasText: gate })).toBeVisible();
  }
  await expect(page.getByText(/^Next: /)).toBeVisible();
  for (const size of [
    { width: 1366, height: 768 },
    { width: 1280, height: 720 },
  ]) {
    await page.setViewportSize(size);
    const found = await page.getByRole('main').evaluate((main) => {
      const texts = [...main.querySelectorAll('*')].filter(
        (e) =>
          !e.classList.contains('visually-hidden') &&
          [...e.childNodes].some((n) => n.nodeType === 3 && n.textContent?.trim()),
      );
      const size = (e: Element) => Number.parseFloat(getComputedStyle(e).fontSize);
      return {
        smallest: Math.min(...texts.map(size)),
        smallestValue: Math.min(...[...main.querySelectorAll('dd')].map(size)),
        isCut: main.scrollHeight > main.clientHeight || main.scrollWidth > main.clientWidth,
        outside: texts
          .filter((e) => e.getBoundingClientRect().right > window.innerWidth)
          .map((e) => e.textContent),
      };
    });
    expect(found.smallest).toBeGreaterThanOrEqual(28);
    expect(found.smallestValue).toBeGreaterThanOrEqual(40);
    expect([found.isCut, found.outside], `${size.width}`).toEqual([false, []]);
  }
  expect(await seriousFindings(page)).toEqual([]);
});

test('Space marks the last pull, Backspace takes the mark back, Escape leads to the bench', async ({
  page,
}) => {
  await expect(page.getByText('The last pull counts')).toBeVisible();
  await page.keyboard.press('Space');
  await expect(page.getByText('Last pull marked bad')).toBeVisible();
  await page.keyboard.press('Space');
  await expect(page.getByText('It is marked already')).toBeVisible();
  await page.keyboard.press('Backspace');
  await expect(page.getByText('The mark is gone')).toBeVisible();
  await page.keyboard.press('Backspace');
  await expect(page.getByText('Nothing was marked here')).toBeVisible();
  // No other key does anything here: the letters of the bench sleep.
  await page.keyboard.press('a');
  await expect(page.getByRole('dialog')).toBeHidden();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('navigation', { name: 'Ledger' })).toBeVisible();
});

test('a gate that closes is said aloud and becomes the next step; other changes stay silent', async ({
  page,
}) => {
  const aloud = page.getByRole('status').last();
  await editElsewhere(page, { type: 'session.note', note: 'windy' });
  await expect(page.getByText(/^Next: /)).not.toHaveText(/lambda/);
  await expect(aloud).toHaveText('');
  const limits = { margin_percent: 1, leanestLambda: 0.7, injectorDuty_percent: 85 };
  await editElsewhere(page, {
    type: 'limits.set',
    limits: {
      ...limits,
      intake_C: 60,
      exhaust_C: 950,
      knockEvents: 1,
      mapCeiling_kPa: null,
      boostCeiling_kPa: null,
      fluidPressureLowest_kPa: null,
    },
  });
  await expect(aloud).toHaveText(/Leanest mixture: 0\.\d\d\. Stop\./);
  await expect(page.getByText(/^Next: Leanest mixture: stop and check pump/)).toBeVisible();
});
