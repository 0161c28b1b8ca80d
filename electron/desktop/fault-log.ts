import { appendFileSync, existsSync, mkdirSync, renameSync, statSync } from 'node:fs';
import { join } from 'node:path';

const mostBytes = 1024 * 1024;

/**
 * One line of what went wrong, without anything of the person's: the kind of error and where in our own code
 * it stood. A message is left out, as it may name a file, a folder or a car.
 */
export function faultLine(now: Date, what: string, error: unknown): string {
  const { name, code, stack } = (error instanceof Error ? error : {}) as NodeJS.ErrnoException;
  const frames = (stack ?? '')
    .split('\n')
    .filter((line) => /^\s+at /.test(line))
    .slice(0, 8)
    // Only the last part of a path: what stands before it begins with the person's name on most machines.
    .map((line) => line.trim().replace(/(?:[\w+.-]+:)?(?:[^\s()]*[\\/])([^\\/\s():]+)/g, '$1'));
  return [now.toISOString(), what, name ?? typeof error, code ?? '-', ...frames].join(' | ');
}

/** A log file that never grows past two megabytes: the older half is kept beside the newer. */
export function createFaultLog(folder: string, now: () => Date): (what: string, error: unknown) => void {
  const file = join(folder, 'faults.log');
  return (what, error) => {
    try {
      mkdirSync(folder, { recursive: true });
      if (existsSync(file) && statSync(file).size > mostBytes) renameSync(file, join(folder, 'faults.1.log'));
      appendFileSync(file, `${faultLine(now(), what, error)}\n`);
    } catch {
      // A full disk must not turn a small fault into a large one.
    }
  };
}
