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
  }
}

export type TableAxis = 'across' | 'down';
