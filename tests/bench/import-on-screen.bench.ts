/**
 * How long the screen stands still while a big log is imported: the longest task of the page's own thread in
 * Chromium, from the choice of the file until its pulls are told and drawn, by the clock and by the thread's own
 * processor time. The log is invented.
 *
 *   node tests/bench/import-on-screen.bench.ts [MB, 100] [browser, /usr/bin/chromium]
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright';
import { buildRenderer } from '../../electron/launch/build-renderer.ts';
import { startWorkbench } from '../e2e/support/start-workbench.ts';
import { writeBigLog } from './big-log.ts';
import { tasksBetween } from './screen-speed/thread-times.ts';

const [megabytes = '100', browserPath = '/usr/bin/chromium'] = process.argv.slice(2);
const big = join(tmpdir(), `onechange-bench-${megabytes}.csv`);
writeBigLog(big, Number(megabytes));
if (!buildRenderer(console.log)) throw new Error('the screens could not be built');
const folder = mkdtempSync(join(tmpdir(), 'onechange-screen-'));
const workbench = await startWorkbench({ sampleFolder: folder, isOpen: false, preferences: {} });
const browser = await chromium.launch({
  executablePath: browserPath,
  args: ['--no-sandbox', '--disable-gpu'],
});
try {
  const page = await browser.newPage({ viewport: { width: 1280, height: 720 }, locale: 'en-GB' });
  await page.goto(workbench.link);
  await page.getByRole('button', { name: 'New session' }).click();
  await page.getByRole('textbox', { name: 'Mass as driven' }).fill('1420');
  await page.getByRole('button', { name: 'Create' }).click();
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: /Drop the log here/ }).click();
  const files = await chooser;
  await page.waitForTimeout(2000);
  await browser.startTracing(page, { categories: ['toplevel', 'blink.user_timing'] });
  const mark = (name: string) => page.evaluate((n) => performance.mark(n).startTime, name);
  const from = await mark('chosen');
  await files.setFiles(big);
  await page
    .getByText(/\d+ (complete )?pulls?/)
    .first()
    .waitFor({ timeout: 300_000 });
  const told = await mark('told');
  // What is drawn of the result belongs to it.
  await page.waitForTimeout(4000);
  await mark('rest');
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString());
  console.log(
    `${megabytes} MB imported and told in ${((told - from) / 1000).toFixed(1)} s, load ${loadavg()[0]}`,
  );
  for (const [what, first, last] of [
    ['while it is read', 'chosen', 'told'],
    ['while its pulls are drawn', 'told', 'rest'],
  ] as const) {
    const tasks = tasksBetween(traceEvents, first, last);
    const own = Math.max(0, ...tasks.map((task) => task.own_ms));
    const longest = tasks
      .slice(0, 5)
      .map(
        (t) => `${t.clock_ms.toFixed(0)} (${t.own_ms.toFixed(0)} of it processor) at ${t.at_ms.toFixed(0)}`,
      );
    console.log(`${what}: longest by processor time ${own.toFixed(0)} ms; longest by the clock, ms:`);
    for (const line of longest) console.log(`  ${line}`);
  }
} finally {
  await browser.close();
  await workbench.close();
  rmSync(folder, { recursive: true, force: true });
}
