import { readFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { errorCode } from './file-system.ts';

/** Names one running process so that a later process with the same number is not taken for it. */
export type ProcessMark = {
  readonly host: string;
  /** Changes with every start of the machine; null where the system does not tell. */
  readonly boot: string | null;
  readonly pid: number;
  /** When the process started, in the system's own count; null where the system does not tell. */
  readonly started: string | null;
};

/** What a lock needs to know of the machine; a test plays another one. */
export type ProcessView = {
  readonly self: () => Promise<ProcessMark>;
  /** Of a process on this machine: gone, or its start (null where the system does not tell). */
  readonly look: (pid: number) => Promise<'gone' | { readonly started: string | null }>;
};

async function textOf(path: string): Promise<string | null> {
  try {
    return await readFile(path, 'utf8');
  } catch {
    return null;
  }
}

/** Field 22 of /proc/PID/stat: start time after boot, in clock ticks (Linux man-pages, proc_pid_stat(5)). */
async function startOf(pid: number): Promise<string | null> {
  const stat = await textOf(`/proc/${pid}/stat`);
  // The second field is the program's name in brackets and may itself hold blanks and brackets.
  const fields = stat?.slice(stat.lastIndexOf(')') + 2).split(' ');
  return fields?.[19] ?? null;
}

export const nodeProcessView: ProcessView = {
  async self() {
    const boot = await textOf('/proc/sys/kernel/random/boot_id');
    return {
      host: hostname(),
      boot: boot?.trim() ?? null,
      pid: process.pid,
      started: await startOf(process.pid),
    };
  },
  async look(pid) {
    try {
      process.kill(pid, 0);
    } catch (error) {
      // EPERM: it lives and belongs to somebody else.
      if (errorCode(error) === 'ESRCH') return 'gone';
    }
    return { started: await startOf(pid) };
  },
};
