import { createHash } from 'node:crypto';
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { RequestContext } from '../../core/contract/index.ts';
import type { Log, LogReaderOptions } from '../../core/log/index.ts';
import { fail, ok, type Result } from '../../core/result/index.ts';
import type { AnalysedPull, PullsOfLog, RunAnalysis } from '../../core/session/index.ts';
import type { SourceStream } from '../store/index.ts';
import { orCalledOff } from './called-off.ts';
import type { AnalysisTask, FromLogWorker, FromRowWorker, ToLogWorker, ToRowWorker } from './log-messages.ts';
import { createDealer, type PartDealer } from './part-dealer.ts';

/** It makes next to nothing anew: what it may let lie by default would be a tenth of a log's memory. */
const rowLimits = { maxYoungGenerationSizeMb: 2 };

/** What a crew hears of the request that it works for. */
export type Called = {
  readonly signal: RequestContext['signal'];
  readonly tellShare: (share: number) => void;
};

/**
 * Workers for one big log: one reads it, finds its pulls and their power; another, where the machine has a core for
 * it, reads some of the rows meanwhile. The host only hands things on, so it goes on answering, and a cancel ends the
 * workers in the midst of whatever they do. `end` must be called; nothing can be asked afterwards, nor after a cancel.
 * A second worker for the power was tried: compiling takes it longer than the power of hundreds of pulls.
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
  function watched(worker: Worker): Worker {
    worker.on('error', (error) => {
      fault = { error };
      refuse(error);
    });
    // Who waits for an answer keeps the program alive, an idle worker does not.
    worker.unref();
    return worker;
  }
  const worker = watched(new Worker(new URL('./log-worker.ts', import.meta.url)));
  const rowWorker =
    availableParallelism() > 1
      ? watched(new Worker(new URL('./row-worker.ts', import.meta.url), { resourceLimits: rowLimits }))
      : null;
  let isRowWorkerReady = false;
  let dealer: PartDealer | null = null;
  rowWorker?.on('message', (message: FromRowWorker) => {
    if (message.kind === 'ready') isRowWorkerReady = true;
    else dealer?.rows(message);
  });

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
  const readers = {
    toLogWorker: post,
    toRowWorker: (message: ToRowWorker, transfer: ArrayBuffer[] = []) =>
      rowWorker?.postMessage(message, transfer),
    isRowWorkerReady: () => isRowWorkerReady,
  };

  async function read(
    source: SourceStream,
    options: LogReaderOptions,
    context: Called,
  ): Promise<Result<Log>> {
    // Hashed here, where nobody waits for it: the workers are those that have enough to do.
    const hash = createHash('sha256');
    let read_bytes = 0;
    const dealing = createDealer(source, readers, (bytes) => {
      hash.update(bytes);
      read_bytes += bytes.length;
      context.tellShare(Math.min(1, read_bytes / Math.max(1, source.size)));
    });
    dealer = dealing;
    let pumping: Promise<void> | undefined;
    try {
      return await answerOf<Log>(
        context.signal,
        (message, give) => {
          if (message.kind === 'taken') dealing.taken(message);
          else if (message.kind === 'read') {
            const damage = source.damage(hash.digest('hex'));
            give(damage ? fail(damage) : message.result);
          }
        },
        () => {
          post({ kind: 'start', options: { ...options, isShared: true } });
          pumping = dealing.pump().catch((error) => refuse(error));
        },
      );
    } finally {
      dealing.stop();
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
    end: () => {
      void worker.terminate();
      void rowWorker?.terminate();
    },
  };
}
