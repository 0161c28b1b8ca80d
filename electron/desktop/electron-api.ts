import type * as Electron from 'electron';

/**
 * The part of Electron that the shell is built on. It comes in as an argument, so that the shell runs in tests
 * against a double where the binary is not to be had.
 */
export type ElectronApi = Pick<
  typeof Electron,
  'app' | 'BrowserWindow' | 'dialog' | 'ipcMain' | 'Menu' | 'protocol' | 'screen' | 'session' | 'shell'
>;
