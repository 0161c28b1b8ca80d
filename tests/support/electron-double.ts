import { EventEmitter } from 'node:events';
import type { ElectronApi } from '../../electron/desktop/electron-api.ts';

/** One call that the shell made of Electron: `app.quit`, with its arguments. */
export type Call = { readonly name: string; readonly args: readonly unknown[] };

type Handler = (...args: never[]) => unknown;

/** A window's contents as far as the shell touches them. */
export class DoubleContents extends EventEmitter {
  readonly id: number;
  readonly sent: unknown[][] = [];
  openHandler: ((details: { url: string }) => { action: string }) | undefined;

  constructor(id: number) {
    super();
    this.id = id;
  }

  setWindowOpenHandler(handler: (details: { url: string }) => { action: string }): void {
    this.openHandler = handler;
  }

  send(...args: unknown[]): void {
    this.sent.push(args);
  }

  isDestroyed(): boolean {
    return false;
  }

  async printToPDF(options: unknown): Promise<Uint8Array> {
    this.sent.push(['printToPDF', options]);
    return new TextEncoder().encode('%PDF-double');
  }
}

/** A session's handlers, kept so that a test can ask them what they would allow. */
export function doubleSession() {
  const kept: Record<string, Handler | undefined> = {};
  const keep =
    (name: string) =>
    (handler: Handler): void => {
      kept[name] = handler;
    };
  const schemes = new Map<string, (request: Request) => Promise<Response> | Response>();
  return {
    kept,
    schemes,
    setPermissionRequestHandler: keep('permissionRequest'),
    setPermissionCheckHandler: keep('permissionCheck'),
    setDevicePermissionHandler: keep('devicePermission'),
    setDisplayMediaRequestHandler: keep('displayMedia'),
    webRequest: { onBeforeRequest: keep('beforeRequest') },
    protocol: {
      handle: (scheme: string, handler: (request: Request) => Promise<Response> | Response) =>
        schemes.set(scheme, handler),
      unhandle: (scheme: string) => schemes.delete(scheme),
    },
  };
}

/**
 * The few calls of Electron that the desktop shell makes, recorded, with events that a test can send. It stands
 * in where Electron's binary is not to be had; the end-to-end test with the real one says whether it ran.
 */
export function electronDouble(
  options: {
    readonly isFirst?: boolean;
    readonly answers?: Record<string, unknown>;
    /** Where the system's folders would be. */
    readonly folder?: string;
  } = {},
) {
  const calls: Call[] = [];
  const answers: Record<string, unknown> = { ...options.answers };
  const record =
    (name: string, answer?: unknown) =>
    (...args: unknown[]): unknown => {
      calls.push({ name, args });
      return name in answers ? answers[name] : answer;
    };
  const windows: DoubleWindow[] = [];
  const defaultSession = doubleSession();
  const partitions = new Map<string, ReturnType<typeof doubleSession>>();
  const ipcHandlers = new Map<string, Handler>();
  const ipcMain = Object.assign(new EventEmitter(), {
    handle: (name: string, handler: Handler) => ipcHandlers.set(name, handler),
    removeHandler: (name: string) => ipcHandlers.delete(name),
  });

  const app = Object.assign(new EventEmitter(), {
    isPackaged: false,
    enableSandbox: record('app.enableSandbox'),
    requestSingleInstanceLock: record('app.requestSingleInstanceLock', options.isFirst ?? true),
    whenReady: async () => record('app.whenReady')(),
    quit: record('app.quit'),
    exit: record('app.exit'),
    getPath: (name: string) => `${options.folder ?? '/double'}/${name}`,
    getVersion: () => '0.0.0',
  });

  class DoubleWindow extends EventEmitter {
    readonly webContents: DoubleContents;
    readonly options: Record<string, unknown>;
    isMinimizedNow = false;

    constructor(windowOptions: Record<string, unknown>) {
      super();
      this.options = windowOptions;
      this.webContents = new DoubleContents(windows.length + 1);
      windows.push(this);
      // Electron announces a window's contents before the constructor returns.
      app.emit('web-contents-created', {}, this.webContents);
    }

    async loadURL(address: string): Promise<void> {
      record('window.loadURL')(address);
      app.emit('double-loaded');
    }

    isMinimized = (): boolean => this.isMinimizedNow;
    isMaximized = (): boolean => false;
    getNormalBounds = () => ({ x: 1, y: 2, width: 1000, height: 700 });
    restore = record('window.restore');
    focus = record('window.focus');
    show = record('window.show');
    maximize = record('window.maximize');
    reload = record('window.reload');
    destroy = record('window.destroy');
  }

  const api = {
    app,
    BrowserWindow: DoubleWindow,
    dialog: {
      showErrorBox: record('dialog.showErrorBox'),
      showOpenDialog: async (...args: unknown[]) =>
        record('dialog.showOpenDialog', { filePaths: [] })(...args),
      showSaveDialog: async (...args: unknown[]) =>
        record('dialog.showSaveDialog', { filePath: '' })(...args),
      showMessageBox: async (...args: unknown[]) => record('dialog.showMessageBox', { response: 0 })(...args),
    },
    ipcMain,
    Menu: { buildFromTemplate: (template: unknown) => template, setApplicationMenu: record('Menu.set') },
    protocol: {
      registerSchemesAsPrivileged: record('protocol.register'),
      handle: defaultSession.protocol.handle,
    },
    screen: { getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1080 } }] },
    session: {
      defaultSession,
      fromPartition: (name: string) => {
        const session = partitions.get(name) ?? doubleSession();
        partitions.set(name, session);
        return session;
      },
    },
    shell: { showItemInFolder: record('shell.showItemInFolder') },
  };

  return {
    electron: api as unknown as ElectronApi,
    app,
    ipcMain,
    ipcHandlers,
    calls,
    windows,
    defaultSession,
    partitions,
    names: () => calls.map((call) => call.name),
    last: (name: string) => calls.findLast((call) => call.name === name)?.args,
  };
}

export type ElectronDouble = ReturnType<typeof electronDouble>;
