import { createHash } from 'node:crypto';
import { Worker } from 'node:worker_threads';
import type { RequestContext } from '../../core/contract/index.ts';
import type { DerivedChannel, Log, LogReaderOptions } from '../../core/log/index.ts';
import { fail, ok, type Result } from '../../core/result/index.ts';
import type { AnalysedPull, AnalysisInput, PullsOfLog, RunAnalysis } from '../../core/session/index.ts';
import type { SourceStream } from '../store/index.ts';
import { orCalledOff } from './called-off.ts';

/** Bytes of a part: some ten milliseconds of reading. */
const partLength = 1 << 20;
/** Parts on their way to the worker, so that neither waits for the other and memory stays bounded. */
const mostAhead = 3;

/** What is asked of a log, in a form that can be sent. */
export type AnalysisTask = Omit<AnalysisInput, 'file' | 'derived'> & {
  readonly derivedChannels: readonly DerivedChannel[];
};

/** What goes into the worker and what comes out. */
export type ToLogWorker =
  | { readonly kind: 'start'; readonly options: LogReaderOptions }
  | { readonly kind: 'part'; readonly part: Uint8Array<ArrayBuffer> }
  | { readonly kind: 'end' }
  | { readonly kind: 'analyse'; readonly log: Log; readonly task: AnalysisTask };
export type FromLogWorker =
  /** A part that was read, to be filled anew. */
  | { readonly kind: 'taken'; readonly part: Uint8Array<ArrayBuffer> }
  | { readonly kind: 'read'; readonly result: Result<Log> }
  | { readonly kind: 'found'; readonly found: PullsOfLog }
  | { readonly kind: 'powers'; readonly done: readonly AnalysedPull[] };

/** What a crew hears of the request that it works for. */
export type Called = {
  readonly signal: RequestContext['signal'];
  readonly tellShare: (share: number) => void;
};

/**
 * A worker for one big log: it reads it, finds its pulls and their power. The host only hands things on, so it goes
 * on answering, and a cancel ends the worker in the midst of whatever it does. `end` must be called; nothing can be
 * asked afterwards, nor after a cancel. A second worker for the power was tried: it starts and warms up for longer
 * than the power of hundreds of pulls takes.
 */
export type LogCrew = {
  /** The log never lies in memory whole. Errors: those of readLog, source damage, contract/cancelled. */
  readonly read: (source: SourceStream, options: LogReaderOptions, context: Called) => Promise<Result<Log>>;
  /** Pulls and their power. Errors: contract/cancelled. */
  readonly analyse: (log: Log, task: AnalysisTask, context: Called) => Promise<Result<RunAnalysis>>;
  readonly end: () => void;
};

export function hireCrew(): LogCrew {
  let fault: { readonly error: unknown } | null = null;
  let refuse: (error: unknown) => void = () => undefined;
  const worker = new Worker(new URL('./log-worker.ts', import.meta.url)).on('error', (error) => {
    fault = { error };
    refuse(error);
  });
  // Who waits for an answer keeps the program alive, an idle worker does not.
  worker.unref();

  /** Waits for an answer, a fault or a cancel, whichever comes first. */
  function answerOf<T>(
    signal: Called['signal'],
    listen: (message: FromLogWorker, give: (answer: Result<T>) => void) => void,
    begin: () => void,
  ): Promise<Result<T>> {
    let hear: (message: FromLogWorker) => void = () => undefined;
    const answer = new Promise<Result<T>>((resolve, reject) => {
      refuse = reject;
      if (fault) reject(fault.error);
      hear = (message) => listen(message, resolve);
      worker.on('message', hear);
      begin();
    });
    return orCalledOff(answer, signal).finally(() => {
      worker.off('message', hear);
    });
  }

  const post = (message: ToLogWorker, transfer: ArrayBuffer[] = []) => worker.postMessage(message, transfer);

  async function read(
    source: SourceStream,
    options: LogReaderOptions,
    context: Called,
  ): Promise<Result<Log>> {
    /** Parts to be filled: those that the worker has read come back, so that memory is not asked for anew. */
    const free = Array.from({ length: mostAhead }, () => new Uint8Array(partLength));
    // Hashed here, where nobody waits for it: the worker is the one that has enough to do.
    const hash = createHash('sha256');
    let isDone = false;
    let whenTaken: () => void = () => undefined;
    async function pump(): Promise<void> {
      post({ kind: 'start', options: { ...options, isShared: true } });
      let sent = 0;
      for (;;) {
        while (free.length === 0 && !isDone) {
          await new Promise<void>((resolve) => {
            whenTaken = resolve;
          });
        }
        const part = free.pop();
        if (!part) return;
        const length = await source.read(part);
        if (isDone) return;
        if (length === 0) break;
        const filled = part.subarray(0, length);
        hash.update(filled);
        post({ kind: 'part', part: filled }, [part.buffer]);
        sent += length;
        context.tellShare(Math.min(1, sent / Math.max(1, source.size)));
      }
      post({ kind: 'end' });
    }
    let pumping: Promise<void> | undefined;
    try {
      return await answerOf<Log>(
        context.signal,
        (message, give) => {
          if (message.kind === 'taken') {
            free.push(new Uint8Array(message.part.buffer));
            whenTaken();
          } else if (message.kind === 'read') {
            const damage = source.damage(hash.digest('hex'));
            give(damage ? fail(damage) : message.result);
          }
        },
        () => {
          pumping = pump().catch((error) => refuse(error));
        },
      );
    } finally {
      isDone = true;
      whenTaken();
      // The file must not be closed under a read.
      await pumping;
    }
  }

  function analyse(log: Log, task: AnalysisTask, context: Called): Promise<Result<RunAnalysis>> {
    let found: PullsOfLog | null = null;
    const pulls: AnalysedPull[] = [];
    return answerOf<RunAnalysis>(
      context.signal,
      (message, give) => {
        if (message.kind === 'found') found = message.found;
        else if (message.kind === 'powers') pulls.push(...message.done);
        else return;
        if (!found) return;
        context.tellShare(pulls.length / Math.max(1, found.pulls.length));
        if (pulls.length === found.pulls.length) give(ok({ ...found, pulls }));
      },
      () => post({ kind: 'analyse', log, task }),
    );
  }

  return {
    read,
    analyse,
    end: () => void worker.terminate(),
  };
}
