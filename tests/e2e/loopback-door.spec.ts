import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { expect, test } from 'playwright/test';
import { rendererFolder } from '../../electron/launch/build-renderer.ts';
import { startWebShell, type WebShell } from '../../electron/web/index.ts';
import { type DoubleHost, doubleHost } from '../support/double-host.ts';

let host: DoubleHost;
let shell: WebShell;
let stranger: Server;
/** Another server on this machine: to the browser the same site, to us a stranger. */
let strangerPort: number;
let strangerPage: string;

test.beforeEach(async () => {
  host = doubleHost();
  shell = await startWebShell({ host, rendererFolder });
  strangerPage = '<!doctype html><title>Stranger</title>';
  stranger = createServer((_, response) => response.setHeader('content-type', 'text/html').end(strangerPage));
  await new Promise<void>((resolve) => stranger.listen(0, '127.0.0.1', resolve));
  strangerPort = (stranger.address() as AddressInfo).port;
});

test.afterEach(async () => {
  await shell.close();
  stranger.closeAllConnections();
  await new Promise((resolve) => stranger.close(resolve));
});

test('the link opens the workbench once, and the tab can be reloaded', async ({ page, browser }) => {
  const link = shell.newLink();
  await page.goto(link);
  await page.waitForURL(/\/w-[\w-]{43}\/$/);
  await expect(page).toHaveTitle(/Onechange/);
  await page.reload();
  await expect(page).toHaveTitle(/Onechange/);
  // What stays in the address bar and the history opens nothing for anybody else.
  const other = await browser.newPage();
  expect((await other.goto(page.url()))?.status()).toBe(401);
  expect((await other.goto(link))?.status()).toBe(401);
  await other.close();
});

test('a click on the link in a page of another site opens the workbench too', async ({ page }) => {
  strangerPage = `<!doctype html><a href="${shell.newLink()}">open</a>`;
  await page.goto(`http://localhost:${strangerPort}`);
  await page.getByRole('link', { name: 'open' }).click();
  await page.waitForURL(/\/w-[\w-]{43}\/$/);
  await expect(page).toHaveTitle(/Onechange/);
});

test('the cookie is out of reach of scripts, and goes to no other port', async ({ page, context }) => {
  await page.goto(shell.newLink());
  await page.waitForURL(/\/w-/);
  expect(await page.evaluate(() => document.cookie)).toBe('');
  expect(await context.cookies()).toEqual([
    expect.objectContaining({ name: 'onechange', httpOnly: true, sameSite: 'Strict' }),
  ]);
  const cookies: (string | undefined)[] = [];
  stranger.on('request', (request) => cookies.push(request.headers.cookie));
  await page.goto(`http://127.0.0.1:${strangerPort}/`);
  expect(cookies.length).toBeGreaterThan(0);
  expect(cookies.filter((one) => one !== undefined)).toEqual([]);
});

for (const name of ['127.0.0.1', 'localhost']) {
  test(`a page served from ${name} reaches nothing, even one that knows the path`, async ({ page }) => {
    await page.goto(shell.newLink());
    await page.waitForURL(/\/w-/);
    const base = page.url();
    await page.goto(`http://${name}:${strangerPort}`);
    const got = await page.evaluate(async (target) => {
      const readable: string[] = [];
      const body = '{"input":{}}';
      const attempts: readonly [string, RequestInit][] = [
        ['', {}],
        ['', { mode: 'no-cors' }],
        ['api/stranger.planted', { method: 'POST', body, headers: { 'content-type': 'application/json' } }],
        [
          'api/stranger.planted',
          { method: 'POST', body, headers: { 'content-type': 'text/plain' }, mode: 'no-cors' },
        ],
        ['upload?name=a.csv', { method: 'PUT', body }],
        ['events', {}],
      ];
      for (const [path, init] of attempts) {
        try {
          const response = await fetch(target + path, { credentials: 'include', ...init });
          if (response.type !== 'opaque') readable.push(path);
        } catch {
          // Refused, as it should be.
        }
      }
      const loads = await Promise.all(
        ['iframe', 'img', 'script'].map(
          (tag) =>
            new Promise<string>((resolve) => {
              const element = document.createElement(tag);
              element.setAttribute('src', tag === 'script' ? `${target}assets/` : target);
              element.addEventListener('load', () =>
                resolve(`${tag} ${(element as HTMLIFrameElement).contentDocument}`),
              );
              element.addEventListener('error', () => resolve(`${tag} error`));
              document.body.append(element);
            }),
        ),
      );
      const form = document.createElement('form');
      form.method = 'POST';
      form.action = `${target}api/stranger.planted`;
      form.enctype = 'text/plain';
      form.target = 'elsewhere';
      document.body.append(form);
      form.submit();
      await new Promise((resolve) => setTimeout(resolve, 300));
      return { readable, loads };
    }, base);
    expect(got.readable).toEqual([]);
    expect(got.loads).toEqual(['iframe null', 'img error', 'script error']);
    // The workbench's own page asked for things before it was left; by that name nobody did.
    expect(host.asked.filter(({ name }) => name === 'stranger.planted')).toEqual([]);
    expect(host.uploaded).toEqual([]);
  });
}
