import type { BlockStyle, DerivedChannel, Log, LogReaderOptions, RowBlock } from '../../core/log/index.ts';
import type { Result } from '../../core/result/index.ts';
import type { AnalysedPull, AnalysisInput, PullsOfLog } from '../../core/session/index.ts';

/** What is asked of a log, in a form that can be sent. */
export type AnalysisTask = Omit<AnalysisInput, 'file' | 'derived'> & {
  readonly derivedChannels: readonly DerivedChannel[];
};

/** Bytes of a file on their way to a worker and back, to be filled anew. */
export type Part = Uint8Array<ArrayBuffer>;

/** What goes into the worker that reads and works out a log. What has a place in the file is taken in its turn. */
export type ToLogWorker =
  | { readonly kind: 'start'; readonly options: LogReaderOptions }
  | { readonly kind: 'part'; readonly place: number; readonly part: Part }
  /** Rows that the other worker read, and what it could not. */
  | {
      readonly kind: 'rows';
      readonly place: number;
      readonly block: RowBlock;
      readonly numbers: Float64Array;
      readonly rest: Part | null;
    }
  | { readonly kind: 'end'; readonly place: number }
  | { readonly kind: 'analyse'; readonly log: Log; readonly task: AnalysisTask };
export type FromLogWorker =
  | {
      readonly kind: 'taken';
      readonly part: Part | null;
      readonly numbers: Float64Array | null;
      /** How the rows to come are written, where another may read some of them. */
      readonly style: BlockStyle | null;
    }
  | { readonly kind: 'read'; readonly result: Result<Log> }
  | { readonly kind: 'found'; readonly found: PullsOfLog }
  | { readonly kind: 'powers'; readonly done: readonly AnalysedPull[] };

/** What goes into the worker that reads rows beside it. */
export type ToRowWorker =
  | { readonly kind: 'style'; readonly style: BlockStyle }
  | { readonly kind: 'part'; readonly place: number; readonly part: Part; readonly numbers: Float64Array };
export type FromRowWorker =
  | { readonly kind: 'ready' }
  | {
      readonly kind: 'rows';
      readonly place: number;
      readonly part: Part;
      readonly block: RowBlock;
      readonly numbers: Float64Array;
    };
