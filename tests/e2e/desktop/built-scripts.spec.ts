import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { expect, test } from 'playwright/test';
import { projectFolder } from '../../../electron/launch/pinned-node.mjs';
import { desktopFolder } from '../../../electron/launch/run-in-window.ts';
import { copyOfSample } from '../../support/sample-session.ts';

/** Puts the double in the place of the package that only Electron's binary can serve. */
const hook = `import { registerHooks } from 'node:module';
const double = ${JSON.stringify(new URL('../../support/electron-module.ts', import.meta.url).href)};
registerHooks({
  resolve: (name, context, next) => (name === 'electron' ? { url: double, shortCircuit: true } : next(name, context)),
});`;

let program: ChildProcess;
let lines: AsyncIterator<string>;

test.beforeEach(() => {
  const folder = mkdtempSync(join(tmpdir(), 'onechange-desktop-'));
  const encoded = `data:text/javascript,${encodeURIComponent(hook)}`;
  const session = copyOfSample();
  program = spawn(process.execPath, ['--import', encoded, join(desktopFolder, 'main.mjs'), session], {
    cwd: projectFolder,
    env: { ...process.env, ONECHANGE_DOUBLE_FOLDER: folder, NODE_OPTIONS: '' },
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  if (!program.stdout) throw new Error('no stdout');
  lines = createInterface({ input: program.stdout })[Symbol.asyncIterator]();
});

test.afterEach(() => {
  program.kill('SIGKILL');
});

async function nextLine(): Promise<Record<string, unknown>> {
  return JSON.parse((await lines.next()).value);
}

async function ask(name: string, input: unknown): Promise<{ ok: boolean; value: Record<string, unknown> }> {
  program.stdin?.write(`${JSON.stringify({ name, input })}\n`);
  return (await nextLine()).answer as { ok: boolean; value: Record<string, unknown> };
}

test('the built main script opens the session named on the command line, and ends when asked', async () => {
  expect((await nextLine()).calls).toEqual(
    expect.arrayContaining(['protocol.register', 'Menu.set', 'window.loadURL']),
  );
  const snapshot = await ask('session.get', {});
  expect(snapshot.value).toMatchObject({ session: { name: 'Fenmoor hatch', isInvented: true } });
  program.stdin?.end();
  await nextLineOrEnd();
});

test('a log too large to be read in passing is read by the built worker', async () => {
  await nextLine();
  const folder = mkdtempSync(join(tmpdir(), 'onechange-large-'));
  const log = readFileSync(join(projectFolder, 'sample-sessions', 'logs', '4-mixture.csv'), 'utf8');
  const [head = '', ...rows] = log.trimEnd().split('\n');
  const path = join(folder, 'large.csv');
  // The same pulls again and again, an hour apart, past the size from which a worker reads.
  const shifted = Array.from({ length: Math.ceil(4_000_000 / log.length) }, (_, hour) =>
    rows.map((row) => row.replace(/^[\d.]+/, (time) => String(Number(time) + hour * 3600))).join('\n'),
  );
  writeFileSync(path, [head, ...shifted].join('\n'));
  const imported = await ask('runs.import', { path, entryId: null });
  expect(imported, JSON.stringify(imported).slice(0, 500)).toMatchObject({ ok: true });
});

test('the built preload script loads nothing but Electron', () => {
  const script = readFileSync(join(desktopFolder, 'preload.cjs'), 'utf8');
  expect([...script.matchAll(/require\(["']([^"']+)["']\)/g)].map((match) => match[1])).toEqual(['electron']);
  expect(script).not.toContain('import(');
});

async function nextLineOrEnd(): Promise<void> {
  const end = once(program, 'exit');
  for (let line = await lines.next(); !line.done; line = await lines.next());
  await end;
}
