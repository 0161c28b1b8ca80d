import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Preferences } from '../../../core/contract/index.ts';
import { createHost, preferencesInMemory } from '../../../electron/host/index.ts';
import { rendererFolder } from '../../../electron/launch/build-renderer.ts';
import { startWebShell } from '../../../electron/web/index.ts';

export type Workbench = {
  /** Opens the workbench once. */
  readonly link: string;
  /** Another one, for a browser that knows nothing; those before it open no longer. */
  readonly newLink: () => string;
  readonly close: () => Promise<void>;
};

/**
 * The built screens over the real host, on a loopback port of their own.
 *
 * @param sampleFolder  what the start screen offers as the sample
 * @param isOpen        the sample is open already
 */
export async function startWorkbench(options: {
  readonly sampleFolder: string;
  readonly isOpen: boolean;
  readonly preferences: Partial<Preferences>;
}): Promise<Workbench> {
  const sessionsFolder = mkdtempSync(join(tmpdir(), 'onechange-sessions-'));
  const host = createHost({
    version: '0.0.0',
    shell: 'web',
    sessionsFolder,
    sampleFolder: options.sampleFolder,
    preferences: preferencesInMemory({ language: 'en', theme: 'day', ...options.preferences }),
    now: () => new Date().toISOString(),
    newId: randomUUID,
  });
  if (options.isOpen) {
    const context = { requestId: 'start', signal: { aborted: false }, progress: () => {} };
    const opened = await host.handle('sessions.open', { folder: options.sampleFolder }, context);
    if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  }
  const shell = await startWebShell({ host, rendererFolder });
  return {
    link: shell.newLink(),
    newLink: () => shell.newLink(),
    close: async () => {
      await shell.close();
      await host.close();
      rmSync(sessionsFolder, { recursive: true, force: true });
    },
  };
}
