/**
 * How quick the screens are, in one run of one browser: the first paint of the workbench on the sample beside
 * that of an empty page over the same program; the time from every action to the next paint, beside
 * that of a checkbox on the empty page; what the built screens weigh.
 *
 *   node tests/bench/screen-speed.bench.ts [--only paint|actions|bundle] [--rounds 5] [--part plan --part ride]
 */
import { rmSync } from 'node:fs';
import { loadavg } from 'node:os';
import { dirname } from 'node:path';
import { parseArgs } from 'node:util';
import { type Browser, chromium } from 'playwright';
import { buildRenderer, rendererFolder } from '../../electron/launch/build-renderer.ts';
import { startWorkbench, type Workbench } from '../e2e/support/start-workbench.ts';
import { findBrowser } from '../runner/browser.ts';
import { copyOfSample } from '../support/sample-session.ts';
import { bundleTable } from './screen-speed/bundle-table.ts';
import { type EmptyPages, serveEmptyPages } from './screen-speed/empty-server.ts';
import { paintedAfter } from './screen-speed/first-paint.ts';
import { tellActions } from './screen-speed/tell-actions.ts';

const { values } = parseArgs({
  options: {
    only: { type: 'string', default: '' },
    rounds: { type: 'string', default: '5' },
    part: { type: 'string', multiple: true, default: [] },
  },
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
  const empty = await serveEmptyPages();
  try {
    console.log(`Chromium ${browser.version()}, load ${loadavg()[0]?.toFixed(1)}`);
    if (isAsked('paint')) await tellPaint(browser, workbench, empty, Number(values.rounds));
    if (isAsked('actions') && !(await tellActions(browser, workbench, empty.overPlotly, values.part)))
      process.exitCode = 1;
    console.log(`load at the end ${loadavg()[0]?.toFixed(1)}`);
  } finally {
    await browser.close();
    await workbench.close();
    empty.close();
    rmSync(dirname(sampleFolder), { recursive: true, force: true });
  }
}

/**
 * They take turns, so that a busy machine is equally busy for all. Painted is what says something: the word of an
 * empty page, the headline with the verdict of the sample, which the host sends along and the screen then draws for
 * itself. The first of all warms up the browser and is left out.
 */
async function tellPaint(browser: Browser, workbench: Workbench, empty: EmptyPages, rounds: number) {
  const pages = [
    ['empty page over the same program', 'h1', () => empty.overProgram],
    ['empty page over React and plotly', 'h1', () => empty.overPlotly],
    ['verdict of the sample', 'main h1', () => workbench.newLink()],
    ['the screen that can be used', '#root main h1', () => workbench.newLink()],
    ['its plot', 'main .scatterlayer .js-line', () => workbench.newLink()],
  ] as const;
  const times = pages.map((): number[] => []);
  for (let round = 0; round <= rounds; round++)
    for (const [i, [, selector, address]] of pages.entries()) {
      const painted = await paintedAfter(browser, selector, async () => address());
      if (round > 0) times[i]?.push(painted);
    }
  console.log(`first paint, middle of ${rounds}, each with a profile of its own and nothing in its cache:`);
  const [first = []] = times;
  for (const [i, [name]] of pages.entries()) {
    const own = times[i] ?? [];
    const range = `(${Math.min(...own).toFixed(0)} to ${Math.max(...own).toFixed(0)})`;
    const ratio = (middle(own) / middle(first)).toFixed(2);
    console.log(
      `  ${name.padEnd(36)} ${middle(own).toFixed(0).padStart(6)} ms ${range.padEnd(18)} ${ratio} times the first`,
    );
  }
}
