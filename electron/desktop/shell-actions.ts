import { basename, join } from 'node:path';
import type { BrowserWindow } from 'electron';
import type { HostPort, Preferences } from '../../core/contract/index.ts';
import { defaultPreferences } from '../../core/contract/index.ts';
import type { Result } from '../../core/result/index.ts';
import { createShow, problemText, screenWords } from '../../core/words/index.ts';
import { writeAtomic } from '../host/index.ts';
import { askHost } from './ask-host.ts';
import type { ElectronApi } from './electron-api.ts';
import { printHandover } from './handover-pdf.ts';

export type ShellActions = ReturnType<typeof createShellActions>;

/** What the menu and the system can ask of the shell. Everything with a session goes through the host. */
export function createShellActions(
  electron: ElectronApi,
  host: HostPort,
  window: () => BrowserWindow | undefined,
) {
  const preferences = async (): Promise<Preferences> => {
    const answer = await askHost(host, 'preferences.get', {});
    return answer.ok ? answer.value : defaultPreferences;
  };
  const words = async () => screenWords((await preferences()).language).desktop;

  /** Says what went wrong in a dialog of the system, as the screens may not be there to say it. */
  const complain = async (title: 'notOpened' | 'noPdf', result: Result<unknown>): Promise<void> => {
    if (result.ok) return;
    const { language, units } = await preferences();
    const said = problemText(result.problems[0], createShow(language, units));
    electron.dialog.showErrorBox((await words())[title], `${said.message}\n\n${said.remedy}`);
  };

  return {
    preferences,

    async openFolder(folder: string): Promise<void> {
      await complain('notOpened', await askHost(host, 'sessions.open', { folder }));
      window()?.focus();
    },

    async chooseFolder(): Promise<void> {
      const { chooseSession } = await words();
      const { filePaths } = await electron.dialog.showOpenDialog({
        title: chooseSession,
        properties: ['openDirectory'],
      });
      if (filePaths[0] !== undefined) await this.openFolder(filePaths[0]);
    },

    async openSample(): Promise<void> {
      const info = await askHost(host, 'app.info', {});
      if (info.ok && info.value.sampleFolder !== null) await this.openFolder(info.value.sampleFolder);
    },

    async closeSession(): Promise<void> {
      await askHost(host, 'sessions.close', {});
    },

    async showFolder(): Promise<void> {
      const info = await askHost(host, 'app.info', {});
      if (info.ok && info.value.openFolder !== null) electron.shell.showItemInFolder(info.value.openFolder);
    },

    async saveHandoverPdf(): Promise<void> {
      const made = await askHost(host, 'handover.make', {});
      if (!made.ok) return complain('noPdf', made);
      const { savePdf, pdfFiles } = await words();
      const name = `${basename(made.value.fileName, '.html')}.pdf`;
      const { filePath } = await electron.dialog.showSaveDialog({
        title: savePdf,
        defaultPath: join(electron.app.getPath('documents'), name),
        filters: [{ name: pdfFiles, extensions: ['pdf'] }],
      });
      if (filePath) await writeAtomic(filePath, await printHandover(electron, made.value.html));
    },
  };
}
