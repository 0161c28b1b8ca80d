import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';

const renderer = join(import.meta.dirname, '../../../renderer');

export type EmptyPages = {
  /** Over React and plotly, both at once. */
  readonly overPlotly: string;
  /** Over the program of the workbench, which fetches plotly when it has something to plot. */
  readonly overProgram: string;
  readonly close: () => void;
};

const types: Record<string, string> = {
  html: 'text/html',
  js: 'text/javascript',
  css: 'text/css',
  woff2: 'font/woff2',
};

/** The empty pages, each built by itself with the settings of the screens and served on a loopback port. */
export async function serveEmptyPages(): Promise<EmptyPages> {
  const folder = mkdtempSync(join(tmpdir(), 'onechange-empty-'));
  const names = ['empty-page', 'empty-program'] as const;
  for (const name of names) {
    const root = join(folder, `${name}-root`);
    const page = join(import.meta.dirname, `${name}.html`);
    writeFileSync(
      page,
      `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Empty</title></head><body><script type="module" src="./${name}.tsx"></script></body></html>`,
    );
    try {
      await build({
        configFile: join(renderer, 'vite.config.ts'),
        root: import.meta.dirname,
        logLevel: 'error',
        mode: 'production',
        define: { 'process.env.NODE_ENV': '"production"' },
        build: { outDir: root, emptyOutDir: true, rolldownOptions: { input: page } },
      });
    } finally {
      rmSync(page);
    }
  }
  const server = createServer((request, response) => {
    const path = new URL(request.url ?? '/', 'http://localhost').pathname;
    try {
      const body = readFileSync(join(folder, path));
      response.setHeader('content-type', types[path.split('.').at(-1) ?? ''] ?? 'text/plain');
      response.end(body);
    } catch {
      response.statusCode = 404;
      response.end();
    }
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const at = (name: (typeof names)[number]) =>
    `http://127.0.0.1:${(server.address() as AddressInfo).port}/${name}-root/${name}.html`;
  return {
    overPlotly: at('empty-page'),
    overProgram: at('empty-program'),
    close: () => {
      server.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
