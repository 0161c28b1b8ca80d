import type { FolderWatch, RunSummary, WatchedLog } from '../../core/contract/index.ts';
import type { Words } from '../hooks/use-words.tsx';

/** The last part of a path, as its owner calls the folder. */
export function folderName(path: string): string {
  return path.split(/[\\/]/).findLast((part) => part !== '') ?? path;
}

/** How long ago, to the second for a minute, then to the minute, then to the hour. */
export function ageWords(since: string, now_ms: number, { screens, show }: Words): string {
  const said = screens.watch;
  const age_s = Math.max(0, Math.round((now_ms - Date.parse(since)) / 1000));
  if (age_s < 60) return said.seconds(show.number(age_s));
  if (age_s < 3600) return said.minutes(show.number(Math.floor(age_s / 60)));
  return said.hours(show.number(Math.floor(age_s / 3600)));
}

/** What one log is at: being written with what shows so far, in the session with its pulls, or refused and why. */
export function logWords(
  log: WatchedLog,
  takes: boolean,
  runs: readonly RunSummary[],
  words: Words,
): { readonly text: string; readonly isFault: boolean } {
  const said = words.screens.watch;
  const plain = (...parts: readonly string[]) => ({
    text: parts.filter((part) => part !== '').join(', '),
    isFault: false,
  });
  switch (log.state) {
    case 'growing': {
      const { soFar } = log;
      if (!soFar) return plain(said.growing(log.name));
      const length = words.show.quantity(soFar.duration_s, 'time', 0);
      const peak = soFar.peakPower === null ? '' : said.peak(words.show.quantity(soFar.peakPower, 'power'));
      return plain(said.growing(log.name), said.soFar(length, said.pulls(soFar.pulls)), peak);
    }
    case 'complete':
      return plain((takes ? said.complete : said.seen)(log.name));
    case 'taken': {
      const run = runs.find((r) => r.record.id === log.runId);
      if (!run) return plain(said.complete(log.name));
      const pulls = said.pulls(run.pulls.filter((p) => p.complete).length);
      return plain(said.taken(log.name, pulls), log.replaces === null ? '' : said.replaced);
    }
    case 'refused': {
      const [first] = log.problems;
      const why = first ? words.problem(first) : { message: '', remedy: '' };
      return { text: `${said.refused(log.name)}. ${why.message} ${why.remedy}`.trim(), isFault: true };
    }
  }
}

/** The last log that came, whatever became of it. */
export function lastLog(watch: FolderWatch): WatchedLog | null {
  return watch.logs[0] ?? null;
}
