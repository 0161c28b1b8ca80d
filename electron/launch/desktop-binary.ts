import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder } from './pinned-node.mjs';

const electron = join(projectFolder, 'node_modules', 'electron');

/** Path of Electron's binary, where it is on this machine. Looks only; fetches nothing. */
export function desktopBinary(folder = electron): string | undefined {
  const pathFile = join(folder, 'path.txt');
  if (!existsSync(pathFile)) return undefined;
  const dist = process.env.ELECTRON_OVERRIDE_DIST_PATH ?? join(folder, 'dist');
  const path = join(dist, readFileSync(pathFile, 'utf8'));
  return existsSync(path) ? path : undefined;
}

/**
 * Fetches Electron's binary with its own installer, which checks it against the checksums that came with the
 * package. It lives outside the package registry, so a closed machine cannot have it; there this ends at once.
 *
 * @param isWanted whether somebody waits for a window: then a slow line may take its minutes for some 120 MB
 */
export function fetchDesktopBinary(say: (line: string) => void, isWanted: boolean): string | undefined {
  if (isWanted) say("Fetching the desktop shell's binary, some 120 MB, once.");
  spawnSync(process.execPath, [join(electron, 'install.js')], {
    cwd: projectFolder,
    stdio: 'ignore',
    timeout: isWanted ? 600_000 : 10_000,
  });
  return desktopBinary();
}
