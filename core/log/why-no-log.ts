import type { Problem } from '../result/index.ts';
import { createLogReader, type LogReader } from './log-reader.ts';
import { firstLineEnd } from './table/line-ends.ts';
import { headSize, longestLine } from './table/settle-table.ts';

/** So many first bytes tell what a file is: a line that goes on for longer is no row. */
export const tellingBytes = longestLine;

/** What nothing can be made of, however its columns were read: it never was a log. */
const noLog: ReadonlySet<Problem['code']> = new Set([
  'log/empty',
  'log/not-a-table',
  'log/null-bytes',
  'log/line-too-long',
  'log/only-text',
]);

/**
 * Why a file is no log at all: a picture, JSON, a letter, random bytes, nothing. Null for a log, also for one that
 * can't be read as it stands: whose time is missing, whose columns are unknown, or in which zero bytes follow rows.
 *
 * @param head  the first `tellingBytes` of the file, or all of a shorter one
 * @param file  name for the problem
 * @returns     the problem that reading it would end with, naming the file
 */
export function whyNoLog(head: Uint8Array, file: string): Problem | null {
  const start = head.subarray(0, headSize);
  const hasLines = firstLineEnd(start) >= 0;
  const reader = createLogReader({ file, size: head.length });
  // A full start with lines in it is looked at as soon as it comes; its rows need no finishing.
  const early = reader.push(hasLines ? start : head);
  const problem = early ?? (hasLines && start.length === headSize ? null : problemAtEnd(reader));
  if (!problem || !noLog.has(problem.code)) return null;
  if (problem.code !== 'log/null-bytes') return problem;
  const before = head.subarray(0, head.indexOf(0));
  return before.length > 0 && whyNoLog(before, file) === null ? null : problem;
}

function problemAtEnd(reader: LogReader): Problem | null {
  const read = reader.finish();
  return read.ok ? null : read.problems[0];
}
