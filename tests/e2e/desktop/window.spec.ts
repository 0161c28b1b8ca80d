import { join } from 'node:path';
import { _electron, expect, test } from 'playwright/test';
import { desktopBinary } from '../../../electron/launch/desktop-binary.ts';
import { hasDisplay } from '../../../electron/launch/display.ts';
import { desktopFolder } from '../../../electron/launch/run-in-window.ts';
import { copyOfSample } from '../../support/sample-session.ts';

const binary = desktopBinary();
const isRoot = process.getuid?.() === 0;

test.describe('the desktop window', () => {
  test.skip(
    binary === undefined,
    "Electron's binary is not on this machine: main and preload ran against a recorded double only",
  );
  test.skip(!hasDisplay(), 'no display for a window: main and preload ran against a recorded double only');

  test('shows the session over the bridge, without Node and without a way out', async () => {
    const program = await _electron.launch({
      executablePath: binary ?? '',
      args: [...(isRoot ? ['--no-sandbox'] : []), join(desktopFolder, 'main.mjs'), copyOfSample()],
    });
    const page = await program.firstWindow();
    await expect(page).toHaveTitle(/Onechange/);
    expect(new URL(page.url()).protocol).toBe('app:');
    const answer = await page.evaluate(async () => {
      const own = window as unknown as {
        onechange: { request(...args: unknown[]): Promise<{ ok: boolean }> };
      };
      const node =
        typeof (globalThis as { process?: unknown }).process +
        typeof (globalThis as { require?: unknown }).require;
      const session = await own.onechange.request('session.get', {}, 'r1');
      const fetched = await fetch('https://example.invalid/').then(
        () => 'fetched',
        () => 'refused',
      );
      return { node, isOpen: session.ok, fetched, opened: window.open('https://example.invalid/') };
    });
    expect(answer).toEqual({ node: 'undefinedundefined', isOpen: true, fetched: 'refused', opened: null });
    await program.close();
  });
});
