import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { expect, test } from 'playwright/test';
import { projectFolder } from '../../electron/launch/pinned-node.mjs';
import { copyOfSample } from '../support/sample-session.ts';

let started: ChildProcess;
let printed: string;
let session: string;

test.beforeEach(() => {
  session = copyOfSample();
  const home = mkdtempSync(join(tmpdir(), 'onechange-home-'));
  printed = '';
  started = spawn(
    process.execPath,
    [join(projectFolder, 'electron', 'launch', 'start.mjs'), '--no-open', '--session', session],
    {
      env: { ...process.env, HOME: home, XDG_CONFIG_HOME: join(home, 'settings') },
      stdio: ['ignore', 'pipe', 'pipe'],
    },
  );
  for (const stream of [started.stdout, started.stderr])
    stream?.on('data', (chunk) => {
      printed += chunk;
    });
});

test.afterEach(() => {
  started.kill('SIGKILL');
});

async function link(): Promise<string> {
  await expect
    .poll(() => /http:\/\/127\.0\.0\.1:\d+\/enter\S+/.exec(printed)?.[0] ?? printed, { timeout: 40_000 })
    .toContain('/enter');
  return /http:\/\/127\.0\.0\.1:\d+\/enter\S+/.exec(printed)?.[0] ?? '';
}

async function isServed(address: string): Promise<boolean> {
  return fetch(new URL('/', address)).then(
    () => true,
    () => false,
  );
}

test('one command shows the ledger, serves the workbench, and ends cleanly on Ctrl-C', async ({ page }) => {
  const address = await link();
  const ledger = printed.slice(0, printed.indexOf(address));
  for (const word of [
    'change',
    'effect',
    '95 % interval',
    'verdict',
    'Baseline',
    'gain',
    'equivalent',
    'not comparable',
  ])
    expect(ledger).toContain(word);

  await page.goto(address);
  await page.waitForURL(/\/w-/);
  await expect(page.locator('#root')).not.toBeEmpty();

  started.kill('SIGINT');
  const [code] = await once(started, 'exit');
  expect([code, printed.trimEnd().split('\n').at(-1)]).toEqual([
    0,
    'Ended. Everything that was confirmed is on disk.',
  ]);
  expect(await isServed(address)).toBe(false);
  // The session is free again for another program.
  const cli = join(projectFolder, 'electron', 'cli', 'onechange.mjs');
  const again = spawnSync(process.execPath, [cli, 'ledger', session, '--json'], { encoding: 'utf8' });
  expect([again.status, JSON.parse(again.stdout).isInvented]).toEqual([0, true]);
});

test('no server outlives a launcher that was killed', async () => {
  const address = await link();
  expect(await isServed(address)).toBe(true);
  started.kill('SIGKILL');
  await once(started, 'exit');
  for (let i = 0; i < 100 && (await isServed(address)); i++) await sleep(100);
  expect(await isServed(address)).toBe(false);
});
