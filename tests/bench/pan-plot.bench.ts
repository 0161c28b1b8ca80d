/**
 * How smoothly a million points pan in Chromium: times between frames while four panels of five pulls of fifty
 * thousand samples move on in every frame, against the same browser doing nothing in its frames.
 *
 *   node tests/bench/pan-plot.bench.ts [SECONDS]
 */
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import react from '@vitejs/plugin-react';
import { chromium } from 'playwright';
import { build } from 'vite';
import { findBrowser } from '../runner/browser.ts';
import type {} from './pan-plot/page.tsx';

const seconds = Number(process.argv[2] ?? 4);
const found = await findBrowser(console.log);
if ('problem' in found) throw new Error(found.problem);
const folder = mkdtempSync(join(tmpdir(), 'onechange-pan-'));
await build({
  configFile: false,
  logLevel: 'error',
  plugins: [react()],
  define: { 'process.env.NODE_ENV': '"production"' },
  build: {
    outDir: folder,
    target: 'es2024',
    lib: {
      entry: join(import.meta.dirname, 'pan-plot/page.tsx'),
      formats: ['iife'],
      name: 'page',
      fileName: 'page',
    },
  },
});
const browser = await chromium.launch({
  executablePath: found.path,
  args: [
    '--disable-gpu',
    '--disable-renderer-backgrounding',
    '--disable-backgrounding-occluded-windows',
    ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
  ],
});
try {
  const page = await browser.newPage({ viewport: { width: 1280, height: 720 } });
  await page.setContent(
    '<style>:root{--before:#2F5D8A;--after:#B4451F;--ink:#1D2730;--soft:#5B6670;--rule:#DCD5C6;--sans:sans-serif}</style><div id="root"></div>',
  );
  for (const file of readdirSync(folder).filter((name) => name.endsWith('.css'))) {
    await page.addStyleTag({ path: join(folder, file) });
  }
  await page.addScriptTag({ path: join(folder, 'page.iife.js') });
  await page.getByRole('img').waitFor();
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('Performance.enable');
  const cpu_s = async () => {
    const { metrics } = await cdp.send('Performance.getMetrics');
    return metrics.find((m) => m.name === 'ProcessTime')?.value ?? Number.NaN;
  };
  const share = (times: number[], of: number) =>
    ([...times].sort((a, b) => a - b)[Math.floor(of * (times.length - 1))] ?? 0).toFixed(1);
  const measure = async (what: string, isPanning: boolean, width_s: number) => {
    const before = await cpu_s();
    const { between, work } = await page.evaluate(([s, p, w]) => window.panFrames(s, p, w), [
      seconds,
      isPanning,
      width_s,
    ] as const);
    const cpu = (1000 * ((await cpu_s()) - before)) / (between.length + 2);
    const rate = (1000 * between.length) / between.reduce((a, b) => a + b, 0);
    console.log(
      `${what.padEnd(22)} ${rate.toFixed(1)} frames a second; between frames ${share(between, 0.5)} ms, 95 % under ${share(between, 0.95)}; work in a frame ${share(work, 0.5)} ms, 95 % under ${share(work, 0.95)}; processor time of the page ${cpu.toFixed(1)} ms a frame, painting included`,
    );
  };
  // The first frames run before the engine has compiled anything.
  await measure('warming up', true, 5);
  await measure('nothing in each frame', false, 10);
  await measure('a tenth in view', true, 1);
  await measure('nine tenths in view', true, 9);
  await measure('nothing in each frame', false, 10);
} finally {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
}
