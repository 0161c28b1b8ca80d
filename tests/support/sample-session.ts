import { cpSync, existsSync, mkdtempSync, readdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { RequestContext } from '../../core/contract/index.ts';
import { createHost, preferencesInMemory } from '../../electron/host/index.ts';

const sample = new URL('../../sample-sessions/fenmoor-hatch', import.meta.url).pathname;

/**
 * A fresh copy of the bundled sample session that a test may do anything to.
 *
 * @param read  a copy whose logs were read: its caches go along, and nothing else of it
 */
export function copyOfSample(read?: string): string {
  const folder = join(mkdtempSync(join(tmpdir(), 'onechange-sample-')), 'fenmoor-hatch');
  cpSync(sample, folder, { recursive: true });
  if (read) for (const path of cachesOf(read)) cpSync(join(read, path), join(folder, path));
  return folder;
}

/** Reads all logs of a copy of the sample through the host, which keeps what it read beside each. */
export async function readLogsOfSample(folder: string): Promise<void> {
  const host = createHost({
    version: '0.0.0',
    shell: 'terminal',
    sessionsFolder: dirname(folder),
    sampleFolder: null,
    preferences: preferencesInMemory({}),
    now: () => '2027-03-14T18:00:00.000Z',
    newId: () => 'reader',
  });
  const context: RequestContext = { requestId: 'read', signal: { aborted: false }, progress: () => {} };
  for (const [name, input] of [
    ['sessions.open', { folder }],
    ['ledger.get', { band: null }],
  ] as const) {
    const answer = await host.handle(name, input, context);
    if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  }
  await host.close();
  const runs = readdirSync(join(folder, 'runs')).length;
  if (cachesOf(folder).length !== runs) throw new Error('not every log of the sample was kept in its cache');
}

function cachesOf(folder: string): readonly string[] {
  return readdirSync(join(folder, 'runs'))
    .map((run) => join('runs', run, 'channels.bin'))
    .filter((path) => existsSync(join(folder, path)));
}
