import { randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import * as electron from 'electron';
import Store from 'electron-store';
import { ok } from '../../core/result/index.ts';
import { createHost } from '../host/index.ts';
import { sampleCopy, userFolders } from '../machine/index.ts';
import { createFaultLog } from './fault-log.ts';
import { printHandover } from './handover-pdf.ts';
import { preferencesInStore, windowStateInStore } from './preference-store.ts';
import { runDesktop } from './run-desktop.ts';

// Built into electron/desktop/dist, and packed beside the screens in the same places.
const here = import.meta.dirname;
const rendererFolder = join(here, '..', '..', '..', 'renderer', 'dist');
const settings = join(electron.app.getPath('appData'), 'onechange');

const onFault = createFaultLog(electron.app.getPath('logs'), () => new Date());
process.on('uncaughtException', (error) => {
  onFault('main', error);
  // Whatever went wrong, what was confirmed is on disk; going on might not keep it so.
  electron.app.exit(1);
});
process.on('unhandledRejection', (error) => onFault('main', error));

/** From a checkout the launcher has made the copy; a packed program brings the sample along. */
function sampleFolder(): string | null {
  const made = process.env.ONECHANGE_SAMPLE;
  if (made) return made;
  const bundled = join(process.resourcesPath ?? here, 'sample-sessions');
  return existsSync(bundled) ? sampleCopy(bundled, join(settings, 'sample')) : null;
}

// Not awaited here: Electron is not ready before this file has come to its end.
void runDesktop(electron, {
  rendererFolder,
  preload: join(here, 'preload.cjs'),
  windowState: windowStateInStore(new Store({ cwd: settings, name: 'window' })),
  onFault,
  words: process.argv.slice(electron.app.isPackaged ? 1 : 2),
  folder: process.cwd(),
  openHost: async () =>
    createHost(
      {
        version: electron.app.getVersion(),
        shell: 'desktop',
        sessionsFolder: userFolders().sessions,
        listedFolders: userFolders().listed,
        sampleFolder: sampleFolder(),
        preferences: preferencesInStore(new Store({ cwd: settings, name: 'preferences' })),
        now: () => new Date().toISOString(),
        newId: randomUUID,
        printPdf: async ({ html }) => ok(await printHandover(electron, html)),
      },
      (error) => onFault('host', error),
    ),
}).catch((error: unknown) => {
  onFault('start', error);
  electron.app.exit(1);
});
