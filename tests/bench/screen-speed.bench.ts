/**
 * How quick the screens are, in one run of one browser: the first paint of the workbench on the sample beside
 * that of an empty page with the same React and plotly; the time from every action to the next paint, beside
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
import { serveEmptyPage } from './screen-speed/empty-server.ts';
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
  const empty = await serveEmptyPage();
  try {
    console.log(`Chromium ${browser.version()}, load ${loadavg()[0]?.toFixed(1)}`);
    if (isAsked('paint')) await tellPaint(browser, workbench, empty.address, Number(values.rounds));
    if (isAsked('actions') && !(await tellActions(browser, workbench, empty.address, values.part)))
      process.exitCode = 1;
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
