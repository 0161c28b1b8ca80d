import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { HostPort } from '../../core/contract/index.ts';
import { loadPictures, type Picture } from './load-pictures.ts';

/** How long a page waits for its picture [ms]; without one it draws itself. */
const longest_ms = 300;

/**
 * The page that the screens start from, with a picture of the first screen in it: the browser paints that at once,
 * while the program is still being started. Drawn ahead where nobody waits yet.
 *
 * @param rendererFolder built screens; the script that draws stands beside them
 */
export function firstPage(host: HostPort, rendererFolder: string): () => Promise<string> {
  const script = join(rendererFolder, '..', 'picture', 'dist', 'draw.mjs');
  const ask = (name: string, input: unknown) =>
    host.handle(name, input, { requestId: 'picture', signal: { aborted: false }, progress: () => {} });
  const drawAlone = async (): Promise<Picture | null> => {
    try {
      return existsSync(script) ? await (await loadPictures(script))(ask) : null;
    } catch {
      // The screens draw themselves as well, and say what is wrong.
      return null;
    }
  };
  let drawing: Promise<Picture | null> | null = null;
  const draw = () => {
    drawing ??= drawAlone().finally(() => {
      drawing = null;
    });
    return drawing;
  };
  void draw();
  return async () => {
    const [page, picture] = await Promise.all([
      readFile(join(rendererFolder, 'index.html'), 'utf8'),
      within(draw(), longest_ms),
    ]);
    return picture ? withPicture(page, picture) : page;
  };
}

/** The built page with the picture in front of what the program is going to draw. */
function withPicture(page: string, { html, language, theme }: Picture): string {
  return page
    .replace('<html lang="en">', `<html lang="${language}" data-theme="${theme}">`)
    .replace('<head>', '<head><script src="./first-look.js"></script>')
    .replace(
      '<div id="root"></div>',
      (root) => `${root}<div id="picture" aria-hidden="true" inert>${html}</div>`,
    );
}

function within<T>(promise: Promise<T>, limit_ms: number): Promise<T | null> {
  return new Promise((resolve) => {
    const timer = setTimeout(() => resolve(null), limit_ms);
    void promise.then((value) => {
      clearTimeout(timer);
      resolve(value);
    });
  });
}
