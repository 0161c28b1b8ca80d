/**
 * Pictures of every screen, for people to look at:
 *
 *   npm run gallery -- [--to FOLDER] [--only NAME] [--size 1280x720] [--theme day|night] [--units metric|imperial] [--language en|de]
 *
 * What is left out runs through all its values; units and language stay metric and English.
 */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { parseArgs } from 'node:util';
import { chromium } from 'playwright';
import { imperialUnits, metricUnits } from '../../../core/units/index.ts';
import { buildRenderer } from '../../../electron/launch/build-renderer.ts';
import { findBrowser } from '../../runner/browser.ts';
import { manyPullsSession } from '../../support/many-pulls-session.ts';
import { copyOfSample } from '../../support/sample-session.ts';
import { openWorkbench } from '../support/open-workbench.ts';
import { startWorkbench } from '../support/start-workbench.ts';
import { scenes } from './scenes.ts';

const { values } = parseArgs({
  options: {
    to: { type: 'string', default: 'test-results/gallery' },
    only: { type: 'string', default: '' },
    size: { type: 'string', multiple: true, default: ['1280x720', '1366x768', '1920x1080'] },
    theme: { type: 'string', multiple: true, default: ['day', 'night'] },
    units: { type: 'string', default: 'metric' },
    language: { type: 'string', default: 'en' },
  },
});

const browserFound = await findBrowser(console.log);
if ('problem' in browserFound) throw new Error(browserFound.problem);
if (!buildRenderer(console.log)) throw new Error('The screens could not be built.');
const browser = await chromium.launch({
  executablePath: browserFound.path,
  args: process.getuid?.() === 0 ? ['--no-sandbox'] : [],
});

mkdirSync(values.to, { recursive: true });
const pictures: string[] = [];
const chosen = scenes.filter(({ name }) => name.includes(values.only));
for (const theme of values.theme as ('day' | 'night')[]) {
  for (const { name, startsWith, reach, prepare } of chosen) {
    const sampleFolder =
      startsWith === 'many-pulls'
        ? await manyPullsSession(mkdtempSync(join(tmpdir(), 'onechange-many-')))
        : copyOfSample();
    await prepare?.(sampleFolder);
    const workbench = await startWorkbench({
      sampleFolder,
      isOpen: startsWith !== 'nothing',
      preferences: {
        theme,
        language: values.language as 'en' | 'de',
        units: values.units === 'imperial' ? imperialUnits : metricUnits,
      },
    });
    const page = await browser.newPage({ viewport: { width: 1366, height: 768 } });
    try {
      await openWorkbench(page, workbench.link);
      await page.getByRole('heading', { level: 1 }).first().waitFor();
      await reach(page);
      for (const size of values.size) {
        const [width = 1280, height = 720] = size.split('x').map(Number);
        await page.setViewportSize({ width, height });
        await page.waitForLoadState('networkidle');
        await page.waitForFunction(() => !document.querySelector('div[role="img"]:empty'));
        // Charts draw themselves anew a moment after the window has its size.
        await page.waitForTimeout(600);
        const file = `${name}.${theme}.${size}.png`;
        await page.screenshot({ path: join(values.to, file) });
        pictures.push(file);
      }
    } catch (error) {
      console.error(`${name} by ${theme}: ${(error as Error).message.split('\n')[0]}`);
      process.exitCode = 1;
    }
    await page.close();
    await workbench.close();
    rmSync(dirname(sampleFolder), { recursive: true, force: true });
  }
}
await browser.close();

const shown = pictures.map(
  (file) => `<figure><img src="${file}" alt=""><figcaption>${file}</figcaption></figure>`,
);
writeFileSync(
  join(values.to, 'index.html'),
  `<!doctype html><meta charset="utf-8"><title>Onechange: every screen</title><style>body{font:16px sans-serif;display:grid;grid-template-columns:repeat(auto-fill,minmax(600px,1fr));gap:24px}img{width:100%;border:1px solid #888}figure{margin:0}</style>${shown.join('\n')}`,
);
console.log(`${pictures.length} pictures in ${values.to}`);
