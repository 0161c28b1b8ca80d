import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { defaultPreferences } from '../../../core/contract/index.ts';
import { fail, ok, type Result } from '../../../core/result/index.ts';
import { runDesktop } from '../../../electron/desktop/run-desktop.ts';
import type { WindowState } from '../../../electron/desktop/workbench-window.ts';
import { type DoubleHost, doubleHost } from '../../support/double-host.ts';
import { type ElectronDouble, electronDouble } from '../../support/electron-double.ts';

let folder: string;
let session: string;
let double: ElectronDouble;
let host: DoubleHost;
let hostsOpened: number;
let state: WindowState;
let faults: string[];
let handover: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'onechange-desktop-'));
  session = join(folder, 'A session');
  mkdirSync(session);
  writeFileSync(join(session, 'session.json'), '{}');
  mkdirSync(join(folder, 'dist'));
  writeFileSync(join(folder, 'dist', 'index.html'), '<!doctype html><title>Workbench</title>');
  hostsOpened = 0;
  state = { bounds: null, isMaximized: false };
  faults = [];
  handover = '<!doctype html><p>Handover</p>';
});

function answer(name: string, input: unknown): Result<unknown> {
  switch (name) {
    case 'preferences.get':
      return ok({ ...defaultPreferences, recent: [{ folder: session, name: 'A session' }] });
    case 'app.info':
      return ok({ sampleFolder: '/sample', openFolder: session });
    case 'handover.make':
      return ok({ fileName: '2027-03-14.html', html: handover });
    case 'sessions.open': {
      const asked = (input as { folder: string }).folder;
      return asked === '/damaged' ? fail({ code: 'contract/no-session', facts: {} }) : ok({});
    }
    default:
      return ok({});
  }
}

async function run(
  words: readonly string[] = [],
  how: Parameters<typeof electronDouble>[0] = {},
): Promise<void> {
  double = electronDouble(how);
  host = doubleHost(answer);
  await runDesktop(double.electron, {
    rendererFolder: join(folder, 'dist'),
    preload: '/program/preload.cjs',
    words,
    folder,
    openHost: async () => {
      hostsOpened++;
      return host;
    },
    windowState: {
      read: () => state,
      write: (next) => {
        state = next;
      },
    },
    onFault: (what, error) => faults.push(`${what} ${(error as Error).message}`),
  });
}

const opened = (): unknown[] =>
  host.asked.filter((one) => one.name === 'sessions.open').map((one) => one.input);

type Item = { label?: string; role?: string; submenu?: Item[]; click?: () => void };

function menuItem(label: string): Item {
  const all = (items: Item[]): Item[] => items.flatMap((item) => [item, ...all(item.submenu ?? [])]);
  const template = double.last('Menu.set')?.[0] as Item[];
  const found = all(template).find((item) => item.label === label);
  if (!found) throw new Error(`no menu item ${label}`);
  return found;
}

describe('the window', () => {
  it('runs its page in the sandbox, isolated, without Node', async () => {
    await run();
    expect(double.windows).toHaveLength(1);
    expect(double.windows[0]?.options.webPreferences).toEqual({
      preload: '/program/preload.cjs',
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
      devTools: true,
    });
    expect(double.last('window.loadURL')).toEqual(['app://workbench/']);
  });

  it('opens only after everything around it is locked', async () => {
    await run();
    const names = double.names();
    expect(names.slice(0, 4)).toEqual([
      'protocol.register',
      'app.enableSandbox',
      'app.requestSingleInstanceLock',
      'app.whenReady',
    ]);
    expect(Object.keys(double.defaultSession.kept).sort()).toEqual([
      'beforeRequest',
      'devicePermission',
      'displayMedia',
      'permissionCheck',
      'permissionRequest',
    ]);
    expect(double.windows[0]?.webContents.openHandler?.({ url: 'app://workbench/' })).toEqual({
      action: 'deny',
    });
  });

  it('stands where it was left, unless that screen is gone', async () => {
    state = { bounds: { x: 100, y: 50, width: 1100, height: 750 }, isMaximized: true };
    await run();
    expect(double.windows[0]?.options).toMatchObject({ x: 100, y: 50, width: 1100, height: 750 });
    expect(double.names()).toContain('window.maximize');
    double.windows[0]?.emit('close');
    expect(state).toEqual({ bounds: { x: 1, y: 2, width: 1000, height: 700 }, isMaximized: false });

    state = { bounds: { x: 5000, y: 50, width: 1100, height: 750 }, isMaximized: false };
    await run();
    expect(double.windows[0]?.options).toMatchObject({ width: 1280, height: 800 });
    expect(double.windows[0]?.options.x).toBeUndefined();
  });
});

describe('a start', () => {
  it('opens the session named on the command line, by folder or by its session.json', async () => {
    await run(['--some-switch', 'A session']);
    expect(opened()).toEqual([{ folder: session }]);
    await run([join(session, 'session.json')]);
    expect(opened()).toEqual([{ folder: session }]);
    await run(['not there', '--flag']);
    expect(opened()).toEqual([]);
  });

  it('while the program runs hands its folder over and ends', async () => {
    await run(['A session'], { isFirst: false });
    expect(double.names()).toEqual([
      'protocol.register',
      'app.enableSandbox',
      'app.requestSingleInstanceLock',
      'app.quit',
    ]);
    expect(double.last('app.requestSingleInstanceLock')).toEqual([{ asked: session }]);
    expect([double.windows.length, hostsOpened]).toEqual([0, 0]);
  });

  it('of another process brings our window to the front, and opens what it names if that is a session', async () => {
    await run();
    const [window] = double.windows;
    if (window) window.isMinimizedNow = true;
    double.app.emit('second-instance', {}, [], '', { asked: session });
    double.app.emit('second-instance', {}, [], '', { asked: '/etc' });
    double.app.emit('second-instance', {}, [], '', null);
    await vi.waitFor(() => expect(opened()).toEqual([{ folder: session }]));
    expect(double.names().filter((name) => name === 'window.restore').length).toBeGreaterThan(0);
  });

  it('by a folder dropped on the icon opens it', async () => {
    await run();
    double.app.emit('open-file', { preventDefault: () => {} }, join(session, 'session.json'));
    await vi.waitFor(() => expect(opened()).toEqual([{ folder: session }]));
  });
});

describe('the menu', () => {
  it('opens recent sessions, the sample and a chosen folder', async () => {
    await run([], { answers: { 'dialog.showOpenDialog': { filePaths: ['/chosen'] } } });
    menuItem('A session').click?.();
    menuItem('Open the invented sample').click?.();
    menuItem('Open a session…').click?.();
    await vi.waitFor(() =>
      expect(opened()).toEqual(
        expect.arrayContaining([{ folder: session }, { folder: '/sample' }, { folder: '/chosen' }]),
      ),
    );
  });

  it('says in a sentence why a session does not open', async () => {
    await run([], { answers: { 'dialog.showOpenDialog': { filePaths: ['/damaged'] } } });
    menuItem('Open a session…').click?.();
    await vi.waitFor(() => expect(double.names()).toContain('dialog.showErrorBox'));
    const [title, text] = double.last('dialog.showErrorBox') ?? [];
    expect(title).toBe('This could not be opened');
    expect(text).toContain('No session is open.');
  });

  it('is made anew when the session changes', async () => {
    await run();
    const made = (): number => double.names().filter((name) => name === 'Menu.set').length;
    const before = made();
    host.emit({ type: 'session-changed', revision: 2 });
    await vi.waitFor(() => expect(made()).toBe(before + 1));
  });

  it('prints the handover to PDF without script, network or leave for anything', async () => {
    const filePath = join(folder, 'handover.pdf');
    await run([], { answers: { 'dialog.showSaveDialog': { filePath } } });
    menuItem('Handover as PDF…').click?.();
    await vi.waitFor(() => expect(readFileSync(filePath, 'utf8')).toBe('%PDF-double'), 5000);
    const printing = double.windows[1];
    expect(printing?.options).toMatchObject({
      show: false,
      webPreferences: { sandbox: true, javascript: false },
    });
    expect(double.names()).toContain('window.destroy');
    const { kept } = double.partitions.get('handover') ?? { kept: {} as Record<string, undefined> };
    const isLetOut = (url: string): boolean => {
      let cancel = true;
      const let_ = kept.beforeRequest as
        | ((details: unknown, answer: (a: { cancel: boolean }) => void) => void)
        | undefined;
      let_?.({ url }, (one) => (cancel = one.cancel));
      return !cancel;
    };
    expect(isLetOut('app://handover/')).toBe(true);
    expect(isLetOut('data:font/woff2;base64,AAAA')).toBe(true);
    expect(isLetOut('data:text/html,x')).toBe(false);
    expect(isLetOut('https://attacker.example/pixel.png')).toBe(false);
    expect(isLetOut('file:///etc/passwd')).toBe(false);
  });
});

describe('the end', () => {
  it('waits for the host to have everything on disk', async () => {
    await run();
    let isClosed = false;
    host.close = async () => {
      await sleep(20);
      isClosed = true;
    };
    let isHeld = false;
    double.app.emit('before-quit', { preventDefault: () => (isHeld = true) });
    expect([isHeld, double.names().includes('app.exit')]).toEqual([true, false]);
    isHeld = false;
    double.app.emit('before-quit', { preventDefault: () => (isHeld = true) });
    expect([isHeld, double.names().includes('app.exit')], 'a second signal').toEqual([true, false]);
    await vi.waitFor(() => expect([isClosed, double.names().includes('app.exit')]).toEqual([true, true]));
  });

  it('comes when the window is closed', async () => {
    await run();
    double.app.emit('window-all-closed');
    expect(double.names()).toContain('app.quit');
  });

  it.each([
    [0, 'window.reload'],
    [1, 'app.quit'],
  ])('of the screens alone keeps the host: answer %s does %s', async (response, does) => {
    await run([], { answers: { 'dialog.showMessageBox': { response } } });
    double.windows[0]?.webContents.emit('render-process-gone', {}, { reason: 'crashed' });
    await vi.waitFor(() => expect(double.names()).toContain(does));
    expect(faults).toEqual(['screens crashed']);
    expect(hostsOpened).toBe(1);
  });
});
