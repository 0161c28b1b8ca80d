/**
 * How quick the screens are, in one run of one browser: the first paint of the workbench on the sample beside
 * that of an empty page with the same React and plotly; the time from every action to the next paint, beside
 * that of a checkbox on the empty page; what the built screens weigh.
 *
 *   node tests/bench/screen-speed.bench.ts [--only paint|actions|bundle] [--rounds 5]
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { loadavg, tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { parseArgs } from 'node:util';
import react from '@vitejs/plugin-react';
import { type Browser, chromium } from 'playwright';
import { build } from 'vite';
import { buildRenderer, rendererFolder } from '../../electron/launch/build-renderer.ts';
import { startWorkbench, type Workbench } from '../e2e/support/start-workbench.ts';
import { findBrowser } from '../runner/browser.ts';
import { copyOfSample } from '../support/sample-session.ts';
import { bundleTable } from './screen-speed/bundle-table.ts';
import { paintedAfter } from './screen-speed/first-paint.ts';
import { type Action, measure, observeEvents } from './screen-speed/interactions.ts';
import { walk } from './screen-speed/walk.ts';

const { values } = parseArgs({
  options: { only: { type: 'string', default: '' }, rounds: { type: 'string', default: '5' } },
});
const isAsked = (part: string) => values.only === '' || values.only === part;
const middle = (of: readonly number[]) =>
  [...of].sort((a, b) => a - b)[Math.floor(of.length / 2)] ?? Number.NaN;

if (!buildRenderer(console.log)) throw new Error('the screens could not be built');
if (isAsked('bundle')) console.log(`${bundleTable(rendererFolder).join('\n')}\n`);
if (isAsked('paint') || isAsked('actions')) {
  const found = await findBrowser(console.log);
  if ('problem' in found) throw new Error(found.problem);
  const browser = await chromium.launch({
    executablePath: found.path,
    args: ['--disable-gpu', ...(process.getuid?.() === 0 ? ['--no-sandbox'] : [])],
  });
  const sampleFolder = copyOfSample();
  const workbench = await startWorkbench({ sampleFolder, isOpen: true, preferences: {} });
  const empty = await serveEmptyPage();
  try {
    console.log(`Chromium ${browser.version()}, load ${loadavg()[0]?.toFixed(1)}`);
    if (isAsked('paint')) await tellPaint(browser, workbench, empty.address, Number(values.rounds));
    if (isAsked('actions')) await tellActions(browser, workbench, empty.address);
    console.log(`load at the end ${loadavg()[0]?.toFixed(1)}`);
  } finally {
    await browser.close();
    await workbench.close();
    empty.close();
    rmSync(dirname(sampleFolder), { recursive: true, force: true });
  }
}

/** The two take turns, so that a busy machine is equally busy for both. */
async function tellPaint(browser: Browser, workbench: Workbench, address: string, rounds: number) {
  const [empty, headline]: number[][] = [[], []];
  for (let round = 0; round < rounds; round++) {
    empty?.push(await paintedAfter(browser, 'h1', async () => address));
    headline?.push(await paintedAfter(browser, 'main h1', async () => workbench.newLink()));
  }
  const of = (times: readonly number[] = []) =>
    `${middle(times).toFixed(0)} ms (${Math.min(...times).toFixed(0)} to ${Math.max(...times).toFixed(0)})`;
  const ratio = (times: readonly number[] = []) => (middle(times) / middle(empty ?? [])).toFixed(2);
  console.log(`first paint, middle of ${rounds} with an empty cache:`);
  console.log(`  empty page over React and plotly  ${of(empty)}`);
  console.log(`  verdict of the sample             ${of(headline)}, ${ratio(headline)} times the empty page`);
}

async function tellActions(browser: Browser, workbench: Workbench, address: string) {
  const toggle: Action = {
    name: 'checkbox on an empty page',
    run: (page) => page.getByRole('checkbox').click(),
  };
  const blank = await browser.newPage();
  blank.setDefaultTimeout(120_000);
  await blank.addInitScript(observeEvents);
  await blank.goto(address, { waitUntil: 'commit' });
  await blank.getByRole('checkbox').waitFor();
  const trivial = await measure(browser, blank, Array<Action>(10).fill(toggle));
  await blank.close();

  const page = await browser.newPage({ viewport: { width: 1280, height: 720 }, locale: 'en-GB' });
  page.setDefaultTimeout(120_000);
  await page.addInitScript(observeEvents);
  await page.goto(workbench.newLink());
  await page.locator('main h1').waitFor();
  await page.waitForTimeout(1500);
  const measured = await measure(browser, page, walk);
  await page.close();
  const line = (name: string, event: number, task: number) =>
    `${name.padEnd(34)} ${event.toFixed(0).padStart(8)} ${task.toFixed(0).padStart(10)}`;
  const worst = (of: 'event_ms' | 'task_ms', list = trivial) => Math.max(...list.map((m) => m[of]));
  console.log(
    `${'ms, from action to next paint'.padEnd(34)} ${'by clock'.padStart(8)} ${'processor'.padStart(10)}`,
  );
  console.log(line('checkbox on an empty page, worst', worst('event_ms'), worst('task_ms')));
  console.log(
    line(
      'the same, middle of 10',
      middle(trivial.map((m) => m.event_ms)),
      middle(trivial.map((m) => m.task_ms)),
    ),
  );
  for (const { name, event_ms, task_ms } of measured) console.log(line(name, event_ms, task_ms));
  console.log(line('worst', worst('event_ms', measured), worst('task_ms', measured)));
}

async function serveEmptyPage(): Promise<{ readonly address: string; readonly close: () => void }> {
  const folder = mkdtempSync(join(tmpdir(), 'onechange-empty-'));
  await build({
    configFile: false,
    logLevel: 'error',
    plugins: [react()],
    define: { 'process.env.NODE_ENV': '"production"' },
    build: {
      outDir: folder,
      target: 'es2024',
      modulePreload: { polyfill: false },
      rolldownOptions: {
        input: join(import.meta.dirname, 'screen-speed/empty-page.tsx'),
        output: { entryFileNames: 'page.js' },
      },
    },
  });
  const script = readFileSync(join(folder, 'page.js'));
  rmSync(folder, { recursive: true, force: true });
  const server = createServer((request, response) => {
    const isScript = request.url === '/page.js';
    response.setHeader('content-type', isScript ? 'text/javascript' : 'text/html');
    response.end(
      isScript
        ? script
        : '<!doctype html><title>Empty</title><body><script type="module" src="/page.js"></script>',
    );
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    close: () => server.close(),
  };
}
