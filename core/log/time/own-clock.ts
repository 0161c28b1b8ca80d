import type { Log } from '../channel.ts';

/**
 * By how much the log's time runs ahead of what its file shows at a sample [s]: 0 unless the file's clock started anew
 * before it. A person finds a moment in the file by the file's own clock.
 */
export function countedOnAt(log: Pick<Log, 'segments'>, sample: number): number {
  return log.segments.find((s) => s.from <= sample && sample < s.to)?.countedOn_s ?? 0;
}
