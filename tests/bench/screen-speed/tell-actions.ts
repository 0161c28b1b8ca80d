import type { Browser } from 'playwright';
import type { Workbench } from '../../e2e/support/start-workbench.ts';
import { showWhole } from '../../support/show-whole.ts';
import { type Action, type Measured, measure, observeEvents } from './interactions.ts';
import { walk } from './walk/index.ts';

/** Longer than this nothing may take until its next paint [ms]. */
const most_ms = 100;

const columns = ['clock', 'listeners', 'own', 'longest'];
const line = (name: string, m: Omit<Measured, 'name'>) =>
  m.failed
    ? `${name.padEnd(40)} not done: ${m.failed}`
    : `${name.padEnd(40)}${[m.event_ms, m.listeners_ms, m.own_ms, m.task_ms].map((ms) => ms.toFixed(0).padStart(10)).join('')}${m.event_ms > most_ms ? `  over ${most_ms} (${m.event})` : ''}`;

/**
 * Walks through the workbench and prints each action: until the next paint by the browser's event timing, the
 * part of it in listeners, the thread's own processor time within it, and its longest task until all is at rest.
 *
 * @param parts  of the walk; none is all of them
 * @returns      whether every action could be done
 */
export async function tellActions(
  browser: Browser,
  workbench: Workbench,
  emptyAddress: string,
  parts: readonly string[],
): Promise<boolean> {
  const trivial = await measureTrivial(browser, emptyAddress);
  const page = await browser.newPage({ viewport: { width: 1280, height: 720 }, locale: 'en-GB' });
  page.setDefaultTimeout(10_000);
  await page.addInitScript(observeEvents);
  await showWhole(page);
  await page.goto(workbench.newLink());
  await page.locator('main h1').waitFor();
  await page.waitForTimeout(2000);
  console.log(`${'ms'.padEnd(40)}${columns.map((name) => name.padStart(10)).join('')}`);
  for (const m of trivial) console.log(line(m.name, m));
  const all: Measured[] = [];
  for (const { part, actions } of walk) {
    if (parts.length > 0 && !parts.includes(part)) continue;
    console.log(part);
    for (const m of await measure(browser, page, actions)) {
      all.push(m);
      console.log(line(`  ${m.name}`, m));
    }
  }
  await page.close();
  const done = all.filter((m) => m.failed === null);
  const worst = (of: 'event_ms' | 'listeners_ms' | 'own_ms' | 'task_ms') =>
    Math.max(...done.map((m) => m[of]));
  console.log(
    line('worst of each', {
      event: 'any event',
      event_ms: worst('event_ms'),
      listeners_ms: worst('listeners_ms'),
      own_ms: worst('own_ms'),
      task_ms: worst('task_ms'),
      failed: null,
    }),
  );
  const over = (of: 'event_ms' | 'own_ms' | 'task_ms') => done.filter((m) => m[of] > most_ms).length;
  console.log(
    `${done.length} actions done of ${all.length}; over ${most_ms} ms by the clock ${over('event_ms')}, by own processor time ${over('own_ms')}, with a longer task afterwards ${over('task_ms')}`,
  );
  return done.length === all.length;
}

/** What a checkbox takes that nothing hangs on: the middle of ten. */
async function measureTrivial(browser: Browser, address: string): Promise<readonly Measured[]> {
  const toggle: Action = {
    name: 'checkbox on an empty page',
    run: (page) => page.getByRole('checkbox').click(),
  };
  const blank = await browser.newPage();
  blank.setDefaultTimeout(120_000);
  await blank.addInitScript(observeEvents);
  await blank.goto(address, { waitUntil: 'commit' });
  await blank.getByRole('checkbox').waitFor();
  const ten = await measure(browser, blank, Array<Action>(10).fill(toggle));
  await blank.close();
  return [...ten].sort((a, b) => a.event_ms - b.event_ms).slice(5, 6);
}
