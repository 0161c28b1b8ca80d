import type { BrowserWindow } from 'electron';
import type { HostPort } from '../../core/contract/index.ts';
import { screenWords } from '../../core/words/index.ts';
import { declareAppScheme, serveScreens } from './app-protocol.ts';
import { askedFolder, sessionFolder } from './asked-folder.ts';
import type { ElectronApi } from './electron-api.ts';
import { denyNetwork, denyWindowPermissions, lockNavigation } from './lockdown.ts';
import { showMenu } from './menu.ts';
import { createShellActions } from './shell-actions.ts';
import { openWindowChannel } from './window-channel.ts';
import { openWorkbenchWindow, type WindowState } from './workbench-window.ts';

export type DesktopOptions = {
  readonly rendererFolder: string;
  readonly preload: string;
  /** Called once the program may run: a second start only hands its folder to the first. */
  readonly openHost: () => Promise<HostPort>;
  readonly windowState: { read(): WindowState; write(state: WindowState): void };
  readonly onFault: (what: string, error: unknown) => void;
  /** Words of the command line after the program, and where it was typed. */
  readonly words: readonly string[];
  readonly folder: string;
};

/**
 * Runs the desktop shell: one program, one window, one host. Resolves when the window is open, or at once
 * where another one already runs.
 */
export async function runDesktop(electron: ElectronApi, options: DesktopOptions): Promise<void> {
  const { app } = electron;
  declareAppScheme(electron);
  app.enableSandbox();
  lockNavigation(electron);
  const asked = askedFolder(options.words, options.folder);
  if (!app.requestSingleInstanceLock({ asked })) {
    app.quit();
    return;
  }
  // A folder dropped on the icon before we are ready (macOS) waits here.
  let dropped: string | undefined;
  let openFolder = async (folder: string): Promise<void> => {
    dropped = folder;
  };
  app.on('open-file', (event, path) => {
    event.preventDefault();
    const folder = sessionFolder(path);
    if (folder) void openFolder(folder);
  });

  await app.whenReady();
  denyWindowPermissions(electron.session.defaultSession);
  denyNetwork(electron.session.defaultSession);
  serveScreens(electron, options.rendererFolder);

  const host = await options.openHost();
  let window: BrowserWindow | undefined;
  const actions = createShellActions(electron, host, () => window);
  openFolder = (folder) => actions.openFolder(folder);
  const closeChannel = openWindowChannel(electron, host, () => window?.webContents);
  host.subscribe((event) => {
    if (event.type === 'session-changed') void showMenu(electron, actions);
  });

  app.on('second-instance', (_event, _words, _folder, data) => {
    if (window?.isMinimized()) window.restore();
    window?.focus();
    // What another process hands over is looked at again: it must name a session's folder.
    const folder = sessionFolder(String((data as { asked?: unknown } | null)?.asked ?? ''));
    if (folder) void openFolder(folder);
  });
  app.on('window-all-closed', () => app.quit());
  let isClosing = false;
  app.on('before-quit', (event) => {
    // A second signal must not cut the closing short; `exit` asks nobody.
    event.preventDefault();
    if (isClosing) return;
    isClosing = true;
    closeChannel();
    // The host has the last word: what it was writing is on disk before the program ends.
    void host.close().finally(() => app.exit());
  });

  const first = asked ?? dropped;
  if (first) await actions.openFolder(first);
  await showMenu(electron, actions);
  window = openWorkbenchWindow(electron, {
    preload: options.preload,
    state: options.windowState.read(),
    onState: (state) => options.windowState.write(state),
  });
  window.webContents.on('render-process-gone', async (_event, details) => {
    if (details.reason === 'clean-exit') return;
    options.onFault('screens', new Error(details.reason));
    const { desktop } = screenWords((await actions.preferences()).language);
    const { response } = await electron.dialog.showMessageBox({
      type: 'error',
      message: desktop.stopped,
      detail: desktop.stoppedMore,
      buttons: [desktop.drawAgain, desktop.quit],
      defaultId: 0,
    });
    if (response === 0) window?.reload();
    else app.quit();
  });
}
