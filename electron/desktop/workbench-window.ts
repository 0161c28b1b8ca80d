import type { BrowserWindow, Rectangle } from 'electron';
import { appOrigin } from './app-protocol.ts';
import type { ElectronApi } from './electron-api.ts';

export type WindowState = { readonly bounds: Rectangle | null; readonly isMaximized: boolean };

export type WindowOptions = {
  readonly preload: string;
  readonly state: WindowState;
  readonly onState: (state: WindowState) => void;
};

/**
 * The one window, shown where it was left if that place is still on a screen. Its page runs in the sandbox
 * without Node; the preload script is all it shares with us.
 */
export function openWorkbenchWindow(electron: ElectronApi, options: WindowOptions): BrowserWindow {
  const { bounds, isMaximized } = options.state;
  const window = new electron.BrowserWindow({
    ...(bounds && isOnScreen(electron, bounds) ? bounds : { width: 1280, height: 800 }),
    minWidth: 900,
    minHeight: 600,
    // Shown once it is drawn: a white flash at night blinds the driver's passenger.
    show: false,
    title: 'Onechange',
    webPreferences: {
      preload: options.preload,
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
      devTools: !electron.app.isPackaged,
    },
  });
  if (isMaximized) window.maximize();
  window.once('ready-to-show', () => window.show());
  window.on('close', () =>
    options.onState({ bounds: window.getNormalBounds(), isMaximized: window.isMaximized() }),
  );
  void window.loadURL(`${appOrigin}/`);
  return window;
}

/** Whether a fair part of it would be seen: a second screen may have been unplugged since. */
function isOnScreen({ screen }: ElectronApi, bounds: Rectangle): boolean {
  return screen.getAllDisplays().some(({ workArea }) => {
    const width =
      Math.min(bounds.x + bounds.width, workArea.x + workArea.width) - Math.max(bounds.x, workArea.x);
    const height =
      Math.min(bounds.y + bounds.height, workArea.y + workArea.height) - Math.max(bounds.y, workArea.y);
    return width >= 200 && height >= 100;
  });
}
