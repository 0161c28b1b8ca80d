/**
 * How long the screen stands still while a big log is imported: the longest task of the page's own thread in
 * Chromium, from the choice of the file until its pulls are told and drawn. The log is invented.
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
  await page.addInitScript(() => {
    const tasks: { start: number; duration: number }[] = [];
    Object.assign(window, { tasks });
    new PerformanceObserver((list) => {
      for (const { startTime, duration } of list.getEntries()) tasks.push({ start: startTime, duration });
    }).observe({ type: 'longtask', buffered: true });
  });
  await page.goto(workbench.link);
  await page.getByRole('button', { name: 'New session' }).click();
  await page.getByRole('textbox', { name: 'Mass as driven' }).fill('1420');
  await page.getByRole('button', { name: 'Create' }).click();
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: /Drop the log here/ }).click();
  const files = await chooser;
  await page.waitForTimeout(2000);
  const from = await page.evaluate(() => performance.now());
  await files.setFiles(big);
  await page
    .getByText(/\d+ (complete )?pulls?/)
    .first()
    .waitFor({ timeout: 300_000 });
  const until = await page.evaluate(() => performance.now());
  // What is drawn of the result belongs to it.
  await page.waitForTimeout(3000);
  const tasks = await page.evaluate(
    () => (window as unknown as { tasks: { start: number; duration: number }[] }).tasks,
  );
  const ours = tasks.filter((task) => task.start >= from).sort((a, b) => b.duration - a.duration);
  const told = ours.map(
    ({ start, duration }) => `${duration.toFixed(0)} ms at ${(start - from).toFixed(0)} ms`,
  );
  console.log(
    `${megabytes} MB imported and told in ${((until - from) / 1000).toFixed(1)} s, load ${loadavg()[0]}`,
  );
  console.log(
    ours.length === 0
      ? 'no task of the page reached 50 ms'
      : `tasks of 50 ms or more: ${told.slice(0, 10).join(', ')}`,
  );
} finally {
  await browser.close();
  await workbench.close();
  rmSync(folder, { recursive: true, force: true });
}
