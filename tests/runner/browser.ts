import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { chromium } from 'playwright';
import { runCommand } from './run-command.ts';

const onPath = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'microsoft-edge-stable',
];

const atFixedPlace: Partial<Record<NodeJS.Platform, readonly string[]>> = {
  darwin: [
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ],
  win32: ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((folder) =>
    ['Google\\Chrome\\Application\\chrome.exe', 'Microsoft\\Edge\\Application\\msedge.exe'].map((path) =>
      join(process.env[folder] ?? 'C:\\', path),
    ),
  ),
};

/**
 * A browser for the end-to-end tests: one that is installed, else Playwright's own, else Debian's package
 * where we may install it. ONECHANGE_BROWSER names another one.
 *
 * @returns its path, or in `problem` what to do
 */
export async function findBrowser(
  say: (line: string) => void,
): Promise<{ readonly path: string } | { readonly problem: string }> {
  const named = process.env.ONECHANGE_BROWSER;
  if (named)
    return (await starts(named)) ? { path: named } : { problem: `ONECHANGE_BROWSER=${named} does not start` };
  const found = (await installed()) ?? (await playwrightsOwn());
  if (found) return { path: found };
  if (process.platform === 'linux' && process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    say("No browser on this machine: installing Debian's chromium with apt-get.");
    const env = { DEBIAN_FRONTEND: 'noninteractive' };
    await runCommand('apt-get', ['update', '-qq'], { env });
    const { code, output } = await runCommand(
      'apt-get',
      ['install', '-y', '-qq', '--no-install-recommends', 'chromium', 'fonts-liberation'],
      { env },
    );
    const fresh = await installed();
    if (code === 0 && fresh) return { path: fresh };
    say(output.trim().split('\n').slice(-5).join('\n'));
  }
  return {
    problem:
      'no Chromium, Chrome or Edge on this machine. Install one, or run `npx playwright install chromium`, or set ONECHANGE_BROWSER to its path.',
  };
}

async function installed(): Promise<string | undefined> {
  const folders = (process.env.PATH ?? '').split(delimiter);
  const candidates = [
    ...onPath.flatMap((name) => folders.map((folder) => join(folder, name))),
    ...(atFixedPlace[process.platform] ?? []),
  ];
  for (const path of candidates) if (existsSync(path) && (await starts(path))) return path;
  return undefined;
}

async function playwrightsOwn(): Promise<string | undefined> {
  const path = chromium.executablePath();
  return existsSync(path) && (await starts(path)) ? path : undefined;
}

/** Some distributions put a stub on the path that only tells to install the real one. */
async function starts(path: string): Promise<boolean> {
  // On Windows a browser opens a window for --version, so there it counts by being there.
  if (process.platform === 'win32') return existsSync(path);
  const { code } = await runCommand(path, ['--version'], { limit_s: 20 });
  return code === 0;
}
