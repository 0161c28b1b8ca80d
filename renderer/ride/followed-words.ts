import type { FolderWatch } from '../../core/contract/index.ts';
import type { Words } from '../hooks/use-words.tsx';
import { lastLog } from '../watch/watch-words.ts';

/**
 * What the passenger has to know of the log that comes next: it is being written, it is read, or it was refused.
 * Empty where none is watched for and once the last one is in, as its pull says the rest.
 */
export function followedWords(watch: FolderWatch | null, { screens, show }: Words): string {
  const said = screens.ride;
  if (!watch) return '';
  if (watch.problem) return said.folderSilent;
  const log = lastLog(watch);
  switch (log?.state) {
    case 'growing': {
      const { soFar, name } = log;
      if (!soFar) return said.followingFirst(name);
      const pulls = screens.watch.pulls(soFar.pulls);
      return said.following(name, show.quantity(soFar.duration_s, 'time', 0), pulls);
    }
    case 'complete':
      return watch.takes ? said.reading(log.name) : '';
    case 'refused':
      return said.refused(log.name);
    default:
      return '';
  }
}
