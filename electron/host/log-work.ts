import { parentPort } from 'node:worker_threads';
import {
  createLogReader,
  type Log,
  type LogReader,
  type LogReaderOptions,
  loadFormulaParser,
} from '../../core/log/index.ts';
import { fail, ok, type Problem } from '../../core/result/index.ts';
import { type AnalysedPull, pullsOfLog, speedLagOf, withPower } from '../../core/session/index.ts';
import type { AnalysisTask, FromLogWorker, Part, ToLogWorker } from './log-messages.ts';
import { rehearsal } from './rehearsal.ts';
import { sharedLog } from './shared-log.ts';

/** Pulls told at once: some ten milliseconds' worth. */
const batch = 16;

let toldPower: () => void = () => undefined;
/** Once the power of a log's pulls was worked out: all that a log needs has run. */
export const firstPower = new Promise<void>((resolve) => {
  toldPower = resolve;
});

/** Reads a log that arrives in parts: each is read and given back. */
let reader: LogReader | null = null;
let problem: Problem | null = null;

function tell(message: FromLogWorker, transfer: ArrayBuffer[] = []): void {
  parentPort?.postMessage(message, transfer);
}

function start(options: LogReaderOptions): void {
  reader = createLogReader(options);
  problem = null;
  next = 0;
}

/** What arrived before its turn, by its place in the file. */
const early = new Map<number, () => void>();
let next = 0;

function inTurn(place: number, take: () => void): void {
  early.set(place, take);
  for (let turn = early.get(next); turn; turn = early.get(next)) {
    early.delete(next);
    next++;
    turn();
  }
}

function push(bytes: Uint8Array): void {
  // What cannot be read goes on to its end all the same, for its hash: damage is the better explanation.
  if (!problem) problem = reader?.push(bytes) ?? null;
}

function taken(part: Part | null, numbers: Float64Array | null): void {
  const style = reader?.blockStyle() ?? null;
  tell({ kind: 'taken', part, numbers, style }, part ? [part.buffer] : []);
}

function takePart({ part }: ToLogWorker & { kind: 'part' }): void {
  push(part);
  taken(part, null);
}

function takeRows({ block, numbers, rest }: ToLogWorker & { kind: 'rows' }): void {
  if (!problem) problem = reader?.pushBlock(block) ?? null;
  if (rest) push(rest);
  taken(rest, numbers);
}

function finish(): void {
  if (!reader) return;
  const result = problem ? fail(problem) : reader.finish();
  reader = null;
  tell({
    kind: 'read',
    result: result.ok ? ok(sharedLog(result.value)) : result,
  });
}

async function analyse(read: Log, task: AnalysisTask): Promise<void> {
  const { derivedChannels } = task;
  const derived =
    derivedChannels.length > 0 ? { channels: derivedChannels, parser: await loadFormulaParser() } : null;
  const found = pullsOfLog(read, { ...task, derived });
  tell({ kind: 'found', found: { ...found, log: sharedLog(found.log) } });
  const speedLag = speedLagOf(found, task);
  let done: AnalysedPull[] = [];
  for (const [i, edited] of found.pulls.entries()) {
    done.push(withPower(found.log, edited, task, speedLag));
    if (done.length < batch && i < found.pulls.length - 1) continue;
    tell({ kind: 'powers', done });
    done = [];
  }
  if (found.pulls.length > 0) toldPower();
}

let isCalled = false;

/** Until a real log comes: its messages are heard between two steps. */
async function rehearse(): Promise<void> {
  for (const _ of rehearsal()) {
    await new Promise((resolve) => setImmediate(resolve));
    if (isCalled) return;
  }
}

parentPort?.on('message', (message: ToLogWorker) => {
  isCalled = true;
  if (message.kind === 'start') start(message.options);
  else if (message.kind === 'part') inTurn(message.place, () => takePart(message));
  else if (message.kind === 'rows') inTurn(message.place, () => takeRows(message));
  else if (message.kind === 'end') inTurn(message.place, finish);
  else void analyse(message.log, message.task);
});
void rehearse();
