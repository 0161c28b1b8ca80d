import { sep } from 'node:path';
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

/** A document with its history beside it. `shownFolder` ends with a slash or is empty. */
export function placeIn(folder: string, shownFolder: string, stem: string): Place {
  return {
    path: `${folder}${sep}${stem}.json`,
    history: folder + sep + folderNames.history,
    stem,
    shown: `${shownFolder}${stem}.json`,
  };
}

export function sessionPlace(folder: string): Place {
  return placeIn(folder, '', 'session');
}

/** Run ids are checked by IdSchema before they get here: they hold no separator. */
export function runPlace(folder: string, runId: string): Place {
  return placeIn(runFolder(folder, runId), `${folderNames.runs}/${runId}/`, 'run');
}

export function runFolder(folder: string, runId: string): string {
  // By hand: a large session asks for thousands of paths, and nothing here needs to be resolved.
  return folder + sep + folderNames.runs + sep + runId;
}

export function sourcePath(folder: string, runId: string): string {
  return runFolder(folder, runId) + sep + sourceName;
}

export function cachePath(folder: string, runId: string): string {
  return runFolder(folder, runId) + sep + cacheName;
}

/** Its path inside the session, for people. */
export function shownSource(runId: string): string {
  return `${folderNames.runs}/${runId}/${sourceName}`;
}
