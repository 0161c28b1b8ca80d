import { join } from 'node:path';
import { placeOf } from './document.ts';
import type { Place } from './history.ts';

/** Names inside a session folder. `shown` paths use slashes on every system. */
export const folderNames = {
  runs: 'runs',
  history: 'history',
  setAside: 'set-aside',
  handover: 'handover',
} as const;
export const sourceName = 'source.csv';
export const cacheName = 'channels.bin';

export function sessionPlace(folder: string): Place {
  return placeOf(folder, '', 'session');
}

/** Run ids are checked by IdSchema before they get here: they hold no separator. */
export function runPlace(folder: string, runId: string): Place {
  return placeOf(folder, `${folderNames.runs}/${runId}`, 'run');
}

export function runFolder(folder: string, runId: string): string {
  return join(folder, folderNames.runs, runId);
}

export function sourcePath(folder: string, runId: string): string {
  return join(runFolder(folder, runId), sourceName);
}

export function cachePath(folder: string, runId: string): string {
  return join(runFolder(folder, runId), cacheName);
}

/** Its path inside the session, for people. */
export function shownSource(runId: string): string {
  return `${folderNames.runs}/${runId}/${sourceName}`;
}
