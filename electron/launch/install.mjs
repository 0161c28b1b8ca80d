// Plain JavaScript without dependencies: runs on the machine's own Node before anything is installed.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * @typedef {{ version?: string, optional?: boolean, dev?: boolean }} LockedPackage
 * @typedef {{ packages: Record<string, LockedPackage> }} Lock
 */

/**
 * What package-lock.json asks for and node_modules lacks, as `name@version`. Read from the list that npm
 * itself writes last, so an installation that was interrupted counts as missing. Optional packages belong to
 * other platforms and may be absent.
 *
 * @param {string} folder project folder
 * @returns {string[]}
 */
export function missingPackages(folder) {
  const wanted = readLock(join(folder, 'package-lock.json'));
  const found = readLock(join(folder, 'node_modules', '.package-lock.json'));
  if (!wanted) throw new Error(`package-lock.json cannot be read in ${folder}`);
  return Object.entries(wanted.packages)
    .filter(([path, { version, optional }]) => {
      if (path === '' || optional) return false;
      return found?.packages[path]?.version !== version || !existsSync(join(folder, path));
    })
    .map(([path, { version }]) => `${path.replace(/^.*node_modules\//, '')}@${version}`);
}

/**
 * Brings node_modules to what the lock file says. Says nothing when there is nothing to do.
 *
 * @param {string} folder project folder
 * @param {(line: string) => void} say
 * @returns {boolean} whether everything is in place now
 */
export function installWhatIsMissing(folder, say) {
  const missing = missingPackages(folder);
  if (missing.length === 0) return true;
  say(`Installing ${missing.length} packages from the registry (npm ci). This takes a minute or two.`);
  const { command, args, shell } = npm();
  // A production environment variable would leave out the pinned Node and the build tools.
  const options = [
    'ci',
    '--include=dev',
    '--include=optional',
    '--no-audit',
    '--no-fund',
    '--prefer-offline',
    // The machine's own Node is older than some packages ask for; the pinned one runs them.
    '--loglevel=error',
  ];
  const { status, error } = spawnSync(command, [...args, ...options], {
    cwd: folder,
    stdio: 'inherit',
    shell,
  });
  if (status === 0 && missingPackages(folder).length === 0) {
    say('Packages installed.');
    return true;
  }
  say(
    `npm ci failed${error ? ` (${error.message})` : ''}. Is the package registry reachable? Then run it again.`,
  );
  return false;
}

/** The npm that started us, else the one on the path. */
function npm() {
  const running = process.env.npm_execpath;
  if (running && /npm-cli\.[cm]?js$/.test(running) && existsSync(running))
    return { command: process.execPath, args: [running], shell: false };
  // On Windows npm is a command script, which only a shell can start.
  return { command: 'npm', args: [], shell: process.platform === 'win32' };
}

/**
 * @param {string} file
 * @returns {Lock | undefined}
 */
function readLock(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return undefined;
  }
}
