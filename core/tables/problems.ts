import type { TableKind } from './kind.ts';

/** What can be wrong with a table out of an engine control. Lines and columns stand in `where`. */
declare module '../result/result.ts' {
  interface ProblemFacts {
    'tables/empty': Record<string, never>;
    /** No block of numbers with an axis above and one beside it. */
    'tables/no-grid': { rows: number };
    'tables/row-length': { cells: number; expected: number };
    'tables/axis-not-rising': { axis: TableAxis; value: number; previous: number };
    'tables/cell-not-number': { text: string };
    'tables/shape-differs': { rows: number; columns: number; otherRows: number; otherColumns: number };
    'tables/axes-differ': { axis: TableAxis; value: number; other: number };
    'tables/step-not-number': { step: number };
    /** Spark, boost and a leaner mixture go up only towards a limit that the user set. */
    'tables/no-limit': { kind: TableKind };
    /** Typed past the user's limit; in the table's unit. */
    'tables/past-limit': { value: number; limit: number; unit: string };
    /** No engine runs at this value; in the table's unit. */
    'tables/cell-not-plausible': {
      kind: TableKind;
      unit: string;
      value: number;
      lowest: number;
      highest: number;
    };
    /** Breaks an engine at this boost [Pa gauge]; values in the table's unit. */
    'tables/cell-dangerous': { kind: TableKind; unit: string; value: number; highest: number; boost: number };
    /** Neither axis, or not the one that was chosen, holds engine speeds [rpm]. */
    'tables/no-engine-speed': { highest: number };
    'tables/load-not-plausible': { highest: number; unit: string };
  }
}

export type TableAxis = 'across' | 'down';
