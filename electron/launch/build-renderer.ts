import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder } from './pinned-node.mjs';

/** Where the built screens stand; the shells serve this and nothing else. */
export const rendererFolder = join(projectFolder, 'renderer', 'dist');

const stamp = join(rendererFolder, '.built-from');

/** What the built screens depend on: our sources, and every package through its locked version. */
const inputs = ['renderer', 'core', 'electron', 'package-lock.json'];

const builds = [
  ['--config', 'renderer/vite.config.ts'],
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
  // Written last: a build that was interrupted leaves no stamp and is made again.
  writeFileSync(stamp, hash);
  return true;
}

/** SHA-256 over names and bytes of all files under `paths`, built folders left out. */
export function contentHash(folder: string, paths: readonly string[]): string {
  const hash = createHash('sha256');
  for (const path of paths.flatMap((one) => filesUnder(folder, one)))
    hash
      .update(path)
      .update('\0')
      .update(readFileSync(join(folder, path)))
      .update('\0');
  return hash.digest('hex');
}

function filesUnder(folder: string, path: string): readonly string[] {
  const whole = join(folder, path);
  if (!existsSync(whole)) return [];
  try {
    return readdirSync(whole, { withFileTypes: true })
      .filter((entry) => entry.name !== 'dist' && entry.name !== 'node_modules')
      .map((entry) => `${path}/${entry.name}`)
      .sort()
      .flatMap((one) => filesUnder(folder, one));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOTDIR') return [path];
    throw error;
  }
}
