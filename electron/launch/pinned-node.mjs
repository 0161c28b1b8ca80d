// Plain JavaScript without dependencies: runs on the machine's own Node.
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder that holds package.json. */
export const projectFolder = fileURLToPath(new URL('../..', import.meta.url));

/**
 * Whether a Node of this version runs our TypeScript sources as they stand.
 *
 * @param {string} version `24.9.0`
 */
export function runsTypeScript(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  // Types are stripped without a flag from 22.18 and 23.6 on.
  return major >= 24 || (major === 23 && minor >= 6) || (major === 22 && minor >= 18);
}

/**
 * The Node that runs the program: the pinned one, else our own where it is new enough (an npm that was told
 * to run no scripts leaves the pinned one out).
 *
 * @param {string} [folder]
 * @returns {string | undefined} path of the executable
 */
export function pinnedNode(folder = projectFolder) {
  const name = process.platform === 'win32' ? 'node.exe' : 'node';
  const pinned = join(folder, 'node_modules', 'node', 'bin', name);
  if (existsSync(pinned)) return pinned;
  return runsTypeScript(process.versions.node) ? process.execPath : undefined;
}

/**
 * Runs a script of ours under the pinned Node, sharing this terminal, and ends with its exit code.
 *
 * @param {string} script path from the project folder
 * @param {string[]} args
 */
export function handOver(script, args) {
  const node = pinnedNode();
  if (!node) {
    console.error(
      'The pinned Node is not in node_modules, and this Node is older than 22.18. Run: npm rebuild node',
    );
    process.exitCode = 1;
    return;
  }
  const path = `${dirname(node)}${delimiter}${process.env.PATH ?? ''}`;
  // The channel tells the child when we are gone, so that no server outlives a launcher that was killed.
  const child = spawn(node, [join(projectFolder, script), ...args], {
    stdio: ['inherit', 'inherit', 'inherit', 'ipc'],
    env: { ...process.env, PATH: path },
  });
  // Ctrl-C reaches both of us from the terminal, and we wait for the child's end. Sent to us alone (by a
  // script, by npm) it must reach the child through us; one that is ending already takes no harm from it.
  process.on('SIGINT', () => setTimeout(() => child.kill('SIGINT'), 300));
  process.on('SIGTERM', () => child.kill('SIGTERM'));
  child.on('error', (error) => {
    console.error(`${node} does not start: ${error.message}`);
    process.exitCode = 1;
  });
  child.on('exit', (code) => {
    process.exitCode = code ?? 1;
  });
}
