import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import react from '@vitejs/plugin-react';
import { build } from 'vite';

/** The empty page, built as the screens are and served on a loopback port of its own. */
export async function serveEmptyPage(): Promise<{ readonly address: string; readonly close: () => void }> {
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
        input: join(import.meta.dirname, 'empty-page.tsx'),
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
