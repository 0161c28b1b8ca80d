import { access, constants } from 'node:fs/promises';
import { delimiter, join } from 'node:path';

type Machine = {
  readonly platform: NodeJS.Platform;
  readonly environment: Readonly<Record<string, string | undefined>>;
};

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome', 'msedge'];

/** Where a browser of the Chromium family usually stands, most usual first. */
export function usualBrowsers({ platform, environment }: Machine): string[] {
  const asked = environment.ONECHANGE_BROWSER;
  // Who names one means that one, and is told where it is not there.
  if (asked) return [asked];
  const onPath = (environment.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  const executables = platform === 'win32' ? names.map((n) => `${n}.exe`) : names;
  const found = onPath.flatMap((folder) => executables.map((name) => join(folder, name)));
  if (platform === 'darwin') {
    const apps = ['Chromium', 'Google Chrome', 'Microsoft Edge'];
    return [...found, ...apps.map((app) => `/Applications/${app}.app/Contents/MacOS/${app}`)];
  }
  if (platform !== 'win32') return found;
  const roots = [environment.ProgramFiles, environment['ProgramFiles(x86)'], environment.LOCALAPPDATA];
  const places = ['Google/Chrome/Application/chrome.exe', 'Microsoft/Edge/Application/msedge.exe'];
  return [...found, ...roots.flatMap((root) => (root ? places.map((place) => join(root, place)) : []))];
}

/** The first of the usual ones that is there and may be run; null where none is. */
export async function findBrowser(machine: Machine): Promise<string | null> {
  for (const path of usualBrowsers(machine)) {
    const isThere = await access(path, constants.X_OK).then(
      () => true,
      () => false,
    );
    if (isThere) return path;
  }
  return null;
}
