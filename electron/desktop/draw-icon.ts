/**
 * Draws icon.png from the program's own mark: `node electron/desktop/draw-icon.ts BROWSER`, after the mark
 * changed. 1024 pixels square, from which electron-builder makes the sizes and formats of each system.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright';

const size = 1024;
const here = import.meta.dirname;
const mark = readFileSync(join(here, '..', '..', 'renderer', 'design', 'mark.svg'), 'utf8');

const executablePath = process.argv[2];
const browser = await chromium.launch({
  ...(executablePath ? { executablePath } : {}),
  args: process.getuid?.() === 0 ? ['--no-sandbox'] : [],
});
const page = await browser.newPage({ viewport: { width: size, height: size } });
await page.setContent(
  `<style>html,body{margin:0;background:transparent}svg{display:block;width:${size}px;height:${size}px}</style>${mark}`,
);
await page.screenshot({ path: join(here, 'icon.png'), omitBackground: true });
await browser.close();
