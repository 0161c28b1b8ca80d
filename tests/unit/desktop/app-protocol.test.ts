import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeEach, expect, it } from 'vitest';
import { declareAppScheme, isWorkbench, serveScreens } from '../../../electron/desktop/app-protocol.ts';
import { contentSecurityPolicy } from '../../../electron/screens/index.ts';
import { type ElectronDouble, electronDouble } from '../../support/electron-double.ts';

let double: ElectronDouble;

beforeEach(() => {
  const folder = mkdtempSync(join(tmpdir(), 'onechange-app-'));
  mkdirSync(join(folder, 'dist', 'assets'), { recursive: true });
  writeFileSync(join(folder, 'dist', 'index.html'), '<!doctype html><title>Workbench</title>');
  writeFileSync(join(folder, 'dist', 'assets', 'main.js'), 'export {};');
  writeFileSync(join(folder, 'secret.html'), 'secret');
  double = electronDouble();
  serveScreens(double.electron, join(folder, 'dist'));
});

async function ask(address: string, method = 'GET'): Promise<Response> {
  const handler = double.defaultSession.schemes.get('app');
  if (!handler) throw new Error('no handler for app:');
  // Request of the fetch standard refuses nothing about an unknown scheme, as Electron hands it over.
  return handler({ url: address, method } as Request);
}

it('the window gets the built screens under the strict policy', async () => {
  const page = await ask('app://workbench/');
  expect(await page.text()).toContain('Workbench');
  expect(page.headers.get('content-security-policy')).toBe(contentSecurityPolicy);
  expect(page.headers.get('content-type')).toBe('text/html; charset=utf-8');
  expect((await ask('app://workbench/assets/main.js')).headers.get('content-type')).toContain(
    'text/javascript',
  );
});

it.each([
  'app://workbench/../secret.html',
  'app://workbench/%2e%2e/secret.html',
  'app://workbench/..%2fsecret.html',
  'app://workbench/..%5csecret.html',
  'app://workbench//etc/passwd',
  'app://workbench/%00',
  'app://workbench/%',
  'app://other/index.html',
  'app://workbench.example/index.html',
])('%s gets nothing', async (address) => {
  const answer = await ask(address);
  expect([answer.status, await answer.text()]).toEqual([404, 'path']);
  expect(answer.headers.get('content-security-policy')).toBe(contentSecurityPolicy);
});

it('nothing is taken in by this way', async () => {
  expect((await ask('app://workbench/', 'POST')).status).toBe(405);
});

it('the scheme has an origin of its own, without leave to skip its policy', () => {
  declareAppScheme(double.electron);
  expect(double.last('protocol.register')).toEqual([
    [{ scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } }],
  ]);
});

it('an address is the workbench by its parsed origin, not by how it begins', () => {
  expect(isWorkbench('app://workbench/#bench')).toBe(true);
  expect(isWorkbench('app://workbench.example/')).toBe(false);
  expect(isWorkbench('app://workbench@example/')).toBe(false);
});
