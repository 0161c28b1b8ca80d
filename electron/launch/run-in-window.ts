import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { projectFolder } from './pinned-node.mjs';

/** Where the desktop shell's own scripts are built. */
export const desktopFolder = join(projectFolder, 'electron', 'desktop', 'dist');

/**
 * Runs the desktop shell and waits for its end.
 *
 * @param binary Electron's
 * @param folder session to open
 * @param sample working copy of the sample, for the menu
 * @returns exit code
 */
export function runInWindow(binary: string, folder: string, sample: string): Promise<number> {
  const child = spawn(binary, [join(desktopFolder, 'main.mjs'), folder], {
    stdio: 'inherit',
    env: { ...process.env, ONECHANGE_SAMPLE: sample },
  });
  // Whatever ends us, the window closes its session first.
  process.on('SIGINT', () => child.kill('SIGTERM'));
  process.on('SIGTERM', () => child.kill('SIGTERM'));
  process.on('disconnect', () => child.kill('SIGTERM'));
  return new Promise((resolve) => {
    child.on('error', () => resolve(1));
    child.on('exit', (code) => {
      resolve(code ?? 0);
      // The channel to the launcher would keep us alive.
      process.disconnect?.();
    });
  });
}
