import { createHash } from 'node:crypto';
import { parentPort } from 'node:worker_threads';
import {
  createLogReader,
  type Log,
  type LogReader,
  type LogReaderOptions,
  loadFormulaParser,
} from '../../core/log/index.ts';
import { fail, ok, type Problem } from '../../core/result/index.ts';
import { type AnalysedPull, type PullsOfLog, pullsOfLog, withPower } from '../../core/session/index.ts';
import type { AnalysisTask, FromLogWorker, ToLogWorker } from './log-crew.ts';
import { sharedLog } from './shared-log.ts';

/** Pulls told at once: some ten milliseconds' worth. */
const batch = 16;

/** Reads a log that arrives in parts: each is hashed, read and let go. */
let reader: LogReader | null = null;
let problem: Problem | null = null;
let hash = createHash('sha256');

function tell(message: FromLogWorker): void {
  parentPort?.postMessage(message);
}

function start(options: LogReaderOptions): void {
  reader = createLogReader(options);
  problem = null;
  hash = createHash('sha256');
}

function take(part: Uint8Array): void {
  hash.update(part);
  // What cannot be read is hashed to its end all the same: damage is the better explanation.
  if (!problem) problem = reader?.push(part) ?? null;
  tell({ kind: 'taken' });
}

function finish(): void {
  if (!reader) return;
  const result = problem ? fail(problem) : reader.finish();
  reader = null;
  tell({
    kind: 'read',
    result: result.ok ? ok(sharedLog(result.value)) : result,
    sha256: hash.digest('hex'),
  });
}

async function findPullsOf(read: Log, task: AnalysisTask, turn: Int32Array): Promise<void> {
  const { derivedChannels } = task;
  const derived =
    derivedChannels.length > 0 ? { channels: derivedChannels, parser: await loadFormulaParser() } : null;
  const found = pullsOfLog(read, { ...task, derived });
  const told = { ...found, log: sharedLog(found.log) };
  tell({ kind: 'found', found: told });
  powersOf(told, task, turn);
}

/** Takes one pull after another that no other worker has taken. */
function powersOf({ log: of, pulls }: PullsOfLog, task: AnalysisTask, turn: Int32Array): void {
  let done: [number, AnalysedPull][] = [];
  for (;;) {
    const next = Atomics.add(turn, 0, 1);
    const edited = pulls[next];
    if (edited) done.push([next, withPower(of, edited, task)]);
    if (done.length >= batch || (!edited && done.length > 0)) {
      tell({ kind: 'powers', done });
      done = [];
    }
    if (!edited) return;
  }
}

parentPort?.on('message', (message: ToLogWorker) => {
  if (message.kind === 'start') start(message.options);
  else if (message.kind === 'part') take(message.part);
  else if (message.kind === 'end') finish();
  else if (message.kind === 'find') void findPullsOf(message.log, message.task, message.turn);
  else powersOf(message.found, message.task, message.turn);
});
