import { randomUUID } from 'node:crypto';
import { resolve } from 'node:path';
import type { RequestContext, RequestInput, RequestName, RequestOutput } from '../../core/contract/index.ts';
import type { Result } from '../../core/result/index.ts';
import { createHost, preferencesInMemory } from '../host/index.ts';
import { userFolders } from '../machine/index.ts';

/** A terminal call has nothing to cancel it but the key that ends the program, and its progress is its answer. */
const context: RequestContext = {
  requestId: 'terminal',
  signal: { aborted: false },
  progress: () => undefined,
};

export type TerminalHost = {
  readonly ask: <N extends RequestName>(name: N, input: RequestInput<N>) => Promise<Result<RequestOutput<N>>>;
  readonly close: () => Promise<void>;
};

/** The host for one call from the terminal: no preferences are kept, as a script must not change a screen. */
export function terminalHost(version: string): TerminalHost {
  const host = createHost({
    version,
    shell: 'terminal',
    sessionsFolder: userFolders().sessions,
    sampleFolder: null,
    preferences: preferencesInMemory(),
    now: () => new Date().toISOString(),
    newId: () => randomUUID(),
  });
  return {
    ask: async (name, input) => (await host.handle(name, input, context)) as never,
    close: () => host.close(),
  };
}

/** Opens a folder, does something with it and gives it free again, whatever happens. */
export async function withSession<T>(
  folder: string,
  action: (host: TerminalHost, snapshot: RequestOutput<'sessions.open'>) => Promise<Result<T>>,
): Promise<Result<T>> {
  const host = terminalHost('terminal');
  try {
    const opened = await host.ask('sessions.open', { folder: resolve(folder) });
    return opened.ok ? await action(host, opened.value) : opened;
  } finally {
    await host.close();
  }
}
