import { spawn } from 'node:child_process';
import { projectFolder } from '../../electron/launch/pinned-node.mjs';

export type Finished = { readonly code: number; readonly output: string; readonly isTimedOut: boolean };

type Options = {
  /** Prints as it comes, beside keeping it. */
  readonly isLoud?: boolean;
  readonly env?: Readonly<Record<string, string>>;
  /** After this the whole group of processes is ended, so that a hanging test cannot hang the run. */
  readonly limit_s?: number;
};

const running = new Set<() => void>();

/** Ends every command that is still running, with its children. */
export function endRunningCommands(): void {
  for (const end of running) end();
}

/** Runs a command in the project folder and keeps what it prints. */
export function runCommand(
  command: string,
  args: readonly string[],
  options: Options = {},
): Promise<Finished> {
  const { isLoud = false, env = {}, limit_s = 900 } = options;
  return new Promise((resolve) => {
    const isPosix = process.platform !== 'win32';
    const child = spawn(command, args, {
      cwd: projectFolder,
      env: { ...process.env, ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
      // A group of its own, so that the browsers it started end with it.
      detached: isPosix,
    });
    const end = (): void => {
      if (isPosix && child.pid) process.kill(-child.pid, 'SIGKILL');
      else child.kill('SIGKILL');
    };
    let output = '';
    let isTimedOut = false;
    const keep = (chunk: Buffer): void => {
      output += chunk.toString();
      if (isLoud) process.stdout.write(chunk);
    };
    const timer = setTimeout(() => {
      isTimedOut = true;
      end();
    }, limit_s * 1000);
    const finish = (code: number): void => {
      clearTimeout(timer);
      running.delete(end);
      resolve({ code, output, isTimedOut });
    };
    running.add(end);
    child.stdout.on('data', keep);
    child.stderr.on('data', keep);
    child.on('error', (error) => {
      output += error.message;
      finish(1);
    });
    child.on('close', (code) => finish(code ?? 1));
  });
}
