import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { contentHash } from '../machine/index.ts';
import { projectFolder } from './pinned-node.mjs';
import { thirdParties, thirdPartyNotice } from './third-party.ts';

/** Where the built screens stand; the shells serve this and nothing else. */
export const rendererFolder = join(projectFolder, 'renderer', 'dist');

const stamp = join(rendererFolder, '.built-from');

/** What the built screens depend on: our sources, and every package through its locked version. */
const inputs = ['renderer', 'core', 'electron', 'package-lock.json'];

const builds = [
  ['--config', 'renderer/vite.config.ts'],
  ['--config', 'renderer/vite.config.ts', '--mode', 'picture'],
  ['--config', 'electron/desktop/vite.config.ts', '--mode', 'main'],
  ['--config', 'electron/desktop/vite.config.ts', '--mode', 'preload'],
];

/**
 * Builds the screens and the desktop shell's scripts, unless they already stand there built from the very
 * same sources.
 *
 * @returns whether they stand there now
 */
export function buildRenderer(say: (line: string) => void): boolean {
  const hash = contentHash(projectFolder, inputs);
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === hash) return true;
  say('Building the screens.');
  const vite = join(projectFolder, 'node_modules', 'vite', 'bin', 'vite.js');
  // Two builds share this folder, so neither of them may empty it.
  rmSync(join(projectFolder, 'electron', 'desktop', 'dist'), { recursive: true, force: true });
  for (const build of builds) {
    const { status, stdout, stderr } = spawnSync(
      process.execPath,
      [vite, 'build', ...build, '--logLevel', 'warn'],
      { cwd: projectFolder, encoding: 'utf8', env: { ...process.env, NODE_ENV: 'production' } },
    );
    if (status === 0) continue;
    say(`vite build ${build.join(' ')} failed:\n${stdout}${stderr}`);
    return false;
  }
  writeFileSync(join(rendererFolder, 'third-party.txt'), thirdPartyNotice(thirdParties(projectFolder)));
  // Written last: a build that was interrupted leaves no stamp and is made again.
  writeFileSync(stamp, hash);
  return true;
}
