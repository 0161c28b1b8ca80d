/**
 * Draws the icons from the program's own marks: `node electron/desktop/draw-icon.ts BROWSER`, after a mark changed.
 * icons/ holds a picture for each size that Linux asks for (electron-builder makes those of macOS from the largest),
 * icon.ico those of Windows. Small sizes come from the mark that is drawn for them.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright';
import { type IconPicture, icoFile } from './ico-file.ts';

const sizes = [16, 24, 32, 48, 64, 128, 256, 512, 1024];
const windowsSizes = new Set([16, 24, 32, 48, 64, 256]);
/** Up to this many pixels the fine lines of the large mark would be fainter than a pixel. */
const smallUpTo = 32;

const here = import.meta.dirname;
const mark = (name: string) => readFileSync(join(here, '..', '..', 'renderer', 'design', name), 'utf8');
const [large, small] = [mark('mark.svg'), mark('mark-small.svg')];

const executablePath = process.argv[2];
const browser = await chromium.launch({
  ...(executablePath ? { executablePath } : {}),
  args: process.getuid?.() === 0 ? ['--no-sandbox'] : [],
});
const page = await browser.newPage();
const icons = join(here, 'icons');
mkdirSync(icons, { recursive: true });
const forWindows: IconPicture[] = [];
for (const size of sizes) {
  await page.setViewportSize({ width: size, height: size });
  await page.setContent(
    `<style>html,body{margin:0;background:transparent}svg{display:block;width:${size}px;height:${size}px}</style>${size <= smallUpTo ? small : large}`,
  );
  const png = await page.screenshot({ omitBackground: true });
  writeFileSync(join(icons, `${size}x${size}.png`), png);
  if (windowsSizes.has(size)) forWindows.push({ size, png });
}
writeFileSync(join(here, 'icon.ico'), icoFile(forWindows));
await browser.close();
