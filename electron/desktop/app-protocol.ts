import { readFile } from 'node:fs/promises';
import { listBuiltFiles, nameInUrl, securityHeaders } from '../screens/index.ts';
import type { ElectronApi } from './electron-api.ts';

export const appOrigin = 'app://workbench';

/** Whether an address is the workbench itself, compared after parsing. */
export function isWorkbench(address: string): boolean {
  if (!URL.canParse(address)) return false;
  const { protocol, host } = new URL(address);
  return `${protocol}//${host}` === appOrigin;
}

/** Must run before the app is ready: makes `app:` a scheme with an origin, as https has one. */
export function declareAppScheme({ protocol }: Pick<ElectronApi, 'protocol'>): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
  ]);
}

/** Serves the built screens, and nothing else, to the window. */
export function serveScreens({ protocol }: Pick<ElectronApi, 'protocol'>, rendererFolder: string): void {
  const files = listBuiltFiles(rendererFolder);
  protocol.handle('app', async (request) => {
    const headers = { ...securityHeaders };
    if (request.method !== 'GET') return new Response('method', { status: 405, headers });
    const name = isWorkbench(request.url) ? nameInUrl(new URL(request.url).pathname, '/') : undefined;
    const file = name === undefined ? undefined : files.get(name);
    if (!file) return new Response('path', { status: 404, headers });
    return new Response(new Uint8Array(await readFile(file.path)), {
      headers: { ...headers, 'Content-Type': file.contentType },
    });
  });
}
