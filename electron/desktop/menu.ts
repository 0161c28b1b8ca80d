import type { MenuItemConstructorOptions } from 'electron';
import { screenWords } from '../../core/words/index.ts';
import type { ElectronApi } from './electron-api.ts';
import type { ShellActions } from './shell-actions.ts';

/**
 * The menu in the person's language, with the sessions of late. Undo is left to the screens: what it undoes
 * depends on where the person is, and a menu would take the key away from a text being typed.
 */
export async function showMenu(electron: ElectronApi, actions: ShellActions): Promise<void> {
  const { language, recent } = await actions.preferences();
  const words = screenWords(language).desktop;
  const recentItems: MenuItemConstructorOptions[] =
    recent.length === 0
      ? [{ label: words.noRecent, enabled: false }]
      : recent
          .slice(0, 10)
          .map(({ folder, name }) => ({ label: name, click: () => void actions.openFolder(folder) }));
  const separator: MenuItemConstructorOptions = { type: 'separator' };
  const template: MenuItemConstructorOptions[] = [
    ...(process.platform === 'darwin' ? [{ role: 'appMenu' } as const] : []),
    {
      label: words.menus.session,
      submenu: [
        { label: words.openSession, accelerator: 'CmdOrCtrl+O', click: () => void actions.chooseFolder() },
        { label: words.openRecent, submenu: recentItems },
        { label: words.openSample, click: () => void actions.openSample() },
        separator,
        { label: words.showFolder, click: () => void actions.showFolder() },
        { label: words.handoverPdf, click: () => void actions.saveHandoverPdf() },
        separator,
        { label: words.closeSession, click: () => void actions.closeSession() },
        { label: words.quit, role: 'quit' },
      ],
    },
    {
      label: words.menus.edit,
      submenu: [{ role: 'cut' }, { role: 'copy' }, { role: 'paste' }, { role: 'selectAll' }],
    },
    {
      label: words.menus.view,
      submenu: [
        { label: words.larger, role: 'zoomIn' },
        { label: words.smaller, role: 'zoomOut' },
        { label: words.ordinarySize, role: 'resetZoom' },
        separator,
        { label: words.fullScreen, role: 'togglefullscreen' },
        { label: words.reload, role: 'reload' },
      ],
    },
  ];
  electron.Menu.setApplicationMenu(electron.Menu.buildFromTemplate(template));
}
