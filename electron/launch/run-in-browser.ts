import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { defaultPreferences } from '../../core/contract/index.ts';
import type { Result } from '../../core/result/index.ts';
import { createShow, problemText } from '../../core/words/index.ts';
import { createHost, preferencesInFile } from '../host/index.ts';
import { userFolders } from '../machine/index.ts';
import { startWebShell } from '../web/index.ts';
import { rendererFolder } from './build-renderer.ts';
import { hasDisplay, openInBrowser } from './display.ts';
import type { StartOptions } from './options.ts';
import { projectFolder } from './pinned-node.mjs';

type BrowserRun = {
  readonly folder: string;
  readonly sample: string;
  readonly options: StartOptions;
  readonly say: (line: string) => void;
};

/** Serves the workbench to a browser on this machine until Ctrl-C. Resolves with the exit code. */
export async function runInBrowser({ folder, sample, options, say }: BrowserRun): Promise<number> {
  const folders = userFolders();
  const { version } = JSON.parse(readFileSync(join(projectFolder, 'package.json'), 'utf8'));
  const host = createHost({
    version,
    shell: 'web',
    sessionsFolder: folders.sessions,
    listedFolders: folders.listed,
    sampleFolder: sample,
    preferences: preferencesInFile(join(folders.settings, 'preferences.json')),
    now: () => new Date().toISOString(),
    newId: randomUUID,
  });
  const context = { requestId: 'start', signal: { aborted: false }, progress: () => {} };
  sayProblem(await host.handle('sessions.open', { folder }, context), say);

  const shell = await startWebShell({ host, rendererFolder, port: options.port }).catch(
    (error: Error) => error,
  );
  if (shell instanceof Error) {
    say(`The workbench cannot be served: ${shell.message}`);
    await host.close();
    return 1;
  }
  const link = shell.newLink();
  say(`\nOpen the workbench with this link. It works once, on this machine only:\n\n  ${link}\n`);
  const canAsk = process.stdin.isTTY === true;
  say(`Ctrl-C ends it${canAsk ? '; Enter makes another link' : ''}.`);
  if (!options.isQuiet && hasDisplay()) openInBrowser(link);

  return new Promise((resolve) => {
    const terminal = canAsk ? createInterface({ input: process.stdin }) : undefined;
    terminal?.on('line', () => say(`  ${shell.newLink()}`));
    let isEnding = false;
    const end = async (): Promise<void> => {
      if (isEnding) return;
      isEnding = true;
      terminal?.close();
      await shell.close();
      // The host has the last word: what it was writing is on disk before we end.
      await host.close();
      say('\nEnded. Everything that was confirmed is on disk.');
      resolve(0);
      // The channel to the launcher would keep us alive.
      process.disconnect?.();
    };
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => void end());
    process.on('disconnect', () => void end());
  });
}

function sayProblem(result: Result<unknown>, say: (line: string) => void): void {
  if (result.ok) return;
  const said = problemText(result.problems[0], createShow('en', defaultPreferences.units));
  say(`${said.message}\n${said.remedy}`);
}
