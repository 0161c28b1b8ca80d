import { spawnSync } from 'node:child_process';
import { join, resolve } from 'node:path';
import { sampleCopy } from '../machine/index.ts';
import { buildRenderer } from './build-renderer.ts';
import { desktopBinary, fetchDesktopBinary } from './desktop-binary.ts';
import { hasDisplay } from './display.ts';
import { type StartOptions, startHelp, startOptions } from './options.ts';
import { projectFolder } from './pinned-node.mjs';
import { runInBrowser } from './run-in-browser.ts';
import { runInWindow } from './run-in-window.ts';

const say = (line: string): void => console.log(line);
// A terminal that was closed under us takes no more lines; the session still has to be closed.
process.stdout.on('error', () => {});

const options = startOptions(process.argv.slice(2));
if (typeof options === 'string') {
  say(`${options}\n\n${startHelp}`);
  process.exitCode = 2;
} else if (options.wantsHelp) {
  say(startHelp);
} else {
  process.exitCode = await start(options);
}

/** The ledger in the terminal first, then the workbench in a window or in the browser. */
async function start(wanted: StartOptions): Promise<number> {
  const sample = sampleCopy(join(projectFolder, 'sample-sessions'), join(projectFolder, '.cache', 'sample'));
  const folder = wanted.session === undefined ? sample : resolve(wanted.session);
  say(wanted.session === undefined ? `Invented sample session: ${folder}\n` : `Session: ${folder}\n`);
  showLedger(folder);
  if (!buildRenderer(say)) return 1;
  const binary = windowBinary(wanted);
  if (binary) return runInWindow(binary, folder, sample);
  return runInBrowser({ folder, sample, options: wanted, say });
}

function showLedger(folder: string): void {
  const cli = join(projectFolder, 'electron', 'cli', 'onechange.mjs');
  const { status } = spawnSync(process.execPath, [cli, 'ledger', folder], { stdio: 'inherit' });
  say(status === 0 ? '' : '\nThe ledger could not be shown here; the workbench says more.\n');
}

/** Electron's binary where a window of its own is wanted and can be seen; says in one line why not. */
function windowBinary({ wantsBrowser, isQuiet }: StartOptions): string | undefined {
  if (wantsBrowser || isQuiet) return undefined;
  const found = desktopBinary() ?? fetchDesktopBinary(say, hasDisplay());
  if (!found)
    say("The desktop shell's binary is not to be had on this machine: the workbench runs in the browser.");
  else if (!hasDisplay())
    say('There is no display for the desktop shell: the workbench runs in the browser.');
  return hasDisplay() ? found : undefined;
}
