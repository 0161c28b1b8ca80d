import { join } from 'node:path';
import { ok, type Problem, type Result } from '../../core/result/index.ts';
import { attempt } from './disk-problem.ts';
import type { FileSystem } from './file-system.ts';
import { createLineEnds } from './line-ends.ts';
import { nodeFileSystem } from './node-file-system.ts';
import { createSettleDetector, type SeenFile, type SettledFile, usualSettle_ms } from './settle-detector.ts';

/** Shares and card readers send no change notices, so the folder is simply listed again. */
const usualInterval_ms = 250;
/** Rest after a listing in its own lengths: a slow share, or one of thousands of logs, is listed less often. */
const restAfterListing = 4;

/** Endings that loggers use; half-downloaded and hidden files never match. */
const logName = /^[^.~].*\.(csv|tsv|txt|log|dat|asc)$/i;

export type SeenLog = SettledFile & { readonly path: string };

export type WatchOptions = {
  /** Told at each listing in which a log is found new or changed, before it is whole. */
  readonly onGrowing?: (log: SeenLog) => void;
  /** Told once when the folder stops answering, and once, as null, when it does again. */
  readonly onProblem?: (problem: Problem | null) => void;
  readonly interval_ms?: number;
  readonly settle_ms?: number;
  readonly isLog?: (name: string) => boolean;
  readonly fs?: FileSystem;
};

export type FolderWatch = { readonly stop: () => void };

/**
 * Watches a folder that a logger writes into and tells each log once it is complete: new ones, and known ones
 * that grew. What stands there at the start is not told. Links and folders are left alone.
 *
 * Errors: disk problems of the first listing. Later ones go to `onProblem`, and watching goes on.
 */
export function watchFolder(
  folder: string,
  onSettled: (log: SeenLog) => void,
  options: WatchOptions = {},
): Promise<Result<FolderWatch>> {
  const { fs = nodeFileSystem, isLog = (name) => logName.test(name) } = options;
  const detect = createSettleDetector(options.settle_ms ?? usualSettle_ms, (log) => {
    if (!isStopped) options.onGrowing?.({ ...log, path: join(folder, log.name) });
  });
  let isStopped = false;
  let timer: NodeJS.Timeout | undefined;
  let isFailing = false;
  let isFirst = true;
  let listing_ms = 0;
  const endsLine = createLineEnds(fs);

  const look = async () => {
    // A clock that is not set by hand or by the network.
    const from_ms = performance.now();
    const files: SeenFile[] = [];
    for (const file of await logsIn(folder, isLog, fs)) {
      files.push({ ...file, endsLine: await endsLine(join(folder, file.name), file, !isFirst) });
    }
    isFirst = false;
    const now_ms = performance.now();
    listing_ms = now_ms - from_ms;
    for (const log of detect(files, now_ms)) {
      if (!isStopped) onSettled({ ...log, path: join(folder, log.name) });
    }
  };
  const lookAgain = async () => {
    const looked = await attempt(folder, async () => ok(await look()));
    if (isStopped) return;
    if (!looked.ok && !isFailing) options.onProblem?.(looked.problems[0]);
    if (looked.ok && isFailing) options.onProblem?.(null);
    isFailing = !looked.ok;
    plan();
  };
  /** The next listing starts after the last has ended, however slow the share is. */
  const plan = () => {
    const rest_ms = options.interval_ms ?? Math.max(usualInterval_ms, restAfterListing * listing_ms);
    timer = setTimeout(() => void lookAgain(), rest_ms);
    timer.unref();
  };

  return attempt(folder, async () => {
    await look();
    plan();
    return ok({
      stop() {
        isStopped = true;
        clearTimeout(timer);
      },
    });
  });
}

async function logsIn(folder: string, isLog: (name: string) => boolean, fs: FileSystem): Promise<SeenFile[]> {
  const files: SeenFile[] = [];
  for (const { name, kind } of await fs.list(folder)) {
    if (kind !== 'file' || !isLog(name)) continue;
    const state = await fs.stat(join(folder, name));
    if (state?.kind === 'file') files.push({ name, size: state.size, modified_ms: state.modified_ms });
  }
  return files;
}
