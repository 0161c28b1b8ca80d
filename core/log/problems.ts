import type { QuantityId } from './quantity.ts';
import type { OtherFile } from './table/not-a-log.ts';

/** What can be wrong with a log file. */
declare module '../result/result.ts' {
  interface ProblemFacts {
    /** Formulas of derived channels. */
    'log/formula-too-long': { length: number; most: number };
    'log/formula-empty': Record<string, never>;
    /** More parts, or parts deeper in each other, than any formula needs. */
    'log/formula-too-large': { parts: number; levels: number };
    /** `rest` is what stands from character `at` on; empty where more was to come. */
    'log/formula-unreadable': { at: number; rest: string };
    'log/formula-refused': { part: string };
    'log/formula-symbol-unknown': { symbol: string };
    /** `left` and `right` as dimensionText has them; both empty where `detail` says it all. */
    'log/formula-units': { detail: string; left: string; right: string };
    /** The window of a mean is a channel, or no time above zero. */
    'log/formula-window': Record<string, never>;
    'log/formula-result-units': { found: string; claimed: string };
    /** Nothing in the file, or only blanks. */
    'log/empty': { size: number };
    /** The file is of another kind. */
    'log/not-a-table': { found: OtherFile };
    /** Zero bytes where text should be, in more than a few rows. */
    'log/null-bytes': Record<string, never>;
    /** No line end within this many bytes. */
    'log/line-too-long': { length: number; limit: number };
    /** No row of numbers anywhere at the start of the file. */
    'log/only-text': { linesRead: number };
    /** Each row is a channel, its name in front. */
    /** Each row holds one value of one channel. */
    'log/value-per-row': { channels: number };
    'log/on-its-side': { channels: number; samples: number };
    'log/too-many-columns': { columns: number; limit: number };
    /** Fewer rows of numbers than an analysis can use. */
    'log/too-few-rows': { rows: number; needed: number };
    /** The header parts into another number of names than there are columns. */
    'log/names-uneven': { names: number; columns: number };
    /** The comma parts the columns and is the decimal mark too. */
    'log/comma-twice': { names: number; columns: number };
    /** No column holds the time, and no sample rate is stated. */
    'log/no-time': { columns: readonly string[] };
    /** Engine speed runs on, power or torque stands beside it, and nothing tells the time: a finished curve. */
    'log/curve-without-time': { column: string };
    /** The time column never moves forward. */
    'log/time-stands-still': { time_s: number; columns: readonly string[] };
    /** The time column holds numbers that no clock shows. */
    'log/time-no-clock': { first: number; columns: readonly string[] };
    /** A hand-made mapping names a unit that does not measure the quantity. */
    'log/mapping-unit': { unit: string; quantity: QuantityId };
    /** More rows than memory holds. */
    'log/too-big': { rows: number; columns: number };
    /** Reading was cancelled from outside. */
    'log/cancelled': Record<string, never>;
  }
}
