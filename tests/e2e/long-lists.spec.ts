import type { Page, Route } from 'playwright/test';
import type { PullSummary, Snapshot } from '../../core/contract/index.ts';
import { expect, test } from './support/workbench.ts';

const runs = 500;
const pullsEach = 10;
const entries = 200;

/** The open session as the host would tell it after a long season: what was driven last, driven 500 times. */
function grown(snapshot: Snapshot): Snapshot {
  const last = snapshot.session.ledger.findLast((e) => e.runs.length > 0);
  const run = snapshot.runs.find((r) => r.record.id === last?.runs[0]?.runId);
  const pull = run?.pulls[0];
  if (!last || !run || !pull) throw new Error('the sample has no pull');
  const pullsOf = (runId: string): PullSummary[] =>
    Array.from({ length: pullsEach }, (_, i) => ({
      ...pull,
      id: `${runId}-${i}`,
      runId,
      counts: true,
      droppedBecause: null,
    }));
  const many = Array.from({ length: runs }, (_, i) => {
    const id = `season-${i}`;
    return { ...run, record: { ...run.record, id, name: `season ${i}` }, pulls: pullsOf(id) };
  });
  const [baseline, ...others] = snapshot.session.ledger;
  if (!baseline) throw new Error('the sample has no baseline');
  const windows = many.map(({ record }) => ({ runId: record.id, from_s: null, to_s: null }));
  const more = Array.from({ length: entries }, (_, i) => ({ ...last, id: `entry-${i}`, runs: [] }));
  driven = last.id;
  // The host knows nothing of the season: only what it knows is compared.
  const later = others.map((e) => (e === last ? { ...e, runs: [...e.runs, ...windows] } : e));
  return {
    ...snapshot,
    runs: [...snapshot.runs, ...many],
    session: { ...snapshot.session, ledger: [baseline, ...more, ...later] },
  };
}

/** Which entry of the sample it is that was driven so often. */
let driven = '';

async function grow(route: Route): Promise<void> {
  const response = await route.fetch();
  const answer = await response.json();
  if (answer.ok && answer.value) answer.value = grown(answer.value);
  await route.fulfill({ response, json: answer });
}

const nodes = (page: Page) => page.evaluate(() => document.querySelectorAll('*').length);

test.describe('with 500 runs, 5,000 pulls and 200 entries', () => {
  test.slow();

  test('only what is in sight stands in the page, and arrow keys reach every row', async ({ page }) => {
    const before = await nodes(page);
    await page.route('**/api/session.get', grow);
    await page.reload();
    const ledger = page.getByRole('list', { name: 'Entries of this session' });
    await expect(ledger.locator('[aria-setsize]').first()).toBeVisible({ timeout: 90_000 });
    expect(await ledger.getByRole('listitem').count()).toBeLessThan(60);
    const count = Number(await ledger.locator('[aria-setsize]').first().getAttribute('aria-setsize'));
    expect(count).toBeGreaterThan(entries);

    // From the first entry of the book to the last, by one key.
    await ledger.locator('[aria-posinset="1"] [data-entry]').focus();
    await page.keyboard.press('End');
    await expect(ledger.locator(`[aria-posinset="${count}"] [data-entry]`)).toBeFocused();
    await ledger.locator(`[data-entry="${driven}"]`).click();

    await page.getByRole('tab', { name: /^Pulls\s*5,?0\d\d/ }).click({ timeout: 60_000 });
    const table = page.getByRole('grid');
    const rows = Number(await table.getAttribute('aria-rowcount'));
    expect(rows).toBeGreaterThan(runs * pullsEach);
    expect(await table.locator('tr[aria-rowindex]').count()).toBeLessThan(80);
    expect(await nodes(page)).toBeLessThan(before + 3000);

    // Row after row: each key goes on by one, past what was drawn at first.
    const focused = () => page.evaluate(() => Number(document.activeElement?.getAttribute('aria-rowindex')));
    await table.locator('tr[tabindex="0"]').focus();
    const first = await focused();
    for (let step = 1; step <= 90; step++) {
      await page.keyboard.press('ArrowDown');
      await expect.poll(focused).toBe(first + step);
    }
    await expect(table.locator('tr:focus')).toBeInViewport();
    await page.keyboard.press('End');
    await expect.poll(focused).toBe(rows);
    await expect(table.locator('tr:focus')).toBeInViewport();
    await expect(table.locator('tr:focus')).toContainText('season 499');
    // The entry's heading stays, and Home leads back to the top.
    await expect(table.locator('th[scope="rowgroup"]').last()).toBeAttached();
    await page.keyboard.press('Home');
    await expect.poll(focused).toBe(2);
    expect(await table.locator('tr[aria-rowindex]').count()).toBeLessThan(80);
  });

  test('a long list comes into the page a few rows at a time, so that none of its tasks is long', async ({
    page,
  }) => {
    await page.route('**/api/session.get', grow);
    await page.reload();
    const ledger = page.getByRole('list', { name: 'Entries of this session' });
    await ledger.locator('[aria-setsize]').first().waitFor({ timeout: 90_000 });
    await ledger.locator('[aria-posinset="1"] [data-entry]').focus();
    await page.keyboard.press('End');
    await ledger.locator(`[data-entry="${driven}"]`).click();
    const tab = page.getByRole('tab', { name: /^Pulls\s*5,?0\d\d/ });
    await tab.waitFor({ timeout: 60_000 });
    // What one task adds is told in one go.
    await page.evaluate(() => {
      const told: number[] = [];
      Object.assign(window, { told });
      const isRow = (node: Node) => node instanceof Element && node.matches('tr[aria-rowindex]');
      new MutationObserver((records) => {
        const added = records.flatMap((r) => [...r.addedNodes]);
        const rows = added.flatMap((node) =>
          node instanceof Element ? [...node.querySelectorAll('tr[aria-rowindex]'), node].filter(isRow) : [],
        );
        if (rows.length > 0) told.push(rows.length);
      }).observe(document.body, { childList: true, subtree: true });
    });
    await tab.click();
    const rows = page.getByRole('grid').locator('tr[aria-rowindex]');
    await expect.poll(() => rows.count()).toBeGreaterThan(13);
    const told = await page.evaluate(() => (window as unknown as { told: number[] }).told);
    expect(told.length).toBeGreaterThan(1);
    expect(Math.max(...told)).toBeLessThan(13);
  });
});
