/** A half-open range of samples. */
export type Span = { readonly from: number; readonly to: number };

/**
 * A span, when it began and ended [s] where that is known better than by its rows, and how far both may be off [s],
 * nine times of ten; absent where they are logged.
 */
export type EndedSpan = Span & {
  readonly startAt_s?: number | undefined;
  readonly endAt_s?: number | undefined;
  readonly startWithin_s?: number;
  readonly endWithin_s?: number;
};

/** Samples in which the clock runs on. */
export type Segment = Span & {
  /** What was added to its stamps [s] where it had started anew; 0 is left out. */
  readonly countedOn_s?: number | undefined;
  /** First samples behind short gaps in which the car pulled on; absent where there is none. */
  readonly gapsBefore?: readonly number[];
};
