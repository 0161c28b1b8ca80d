/** What is worth saying of a step in a table. Values in the table's own unit. */
declare module '../result/result.ts' {
  interface NoteFacts {
    'tables/stepped': { cells: number; largest: number };
    'tables/held-by-limit': { cells: number; limit: number };
    'tables/held-by-neighbours': { cells: number; limit: number | null; step: number };
    'tables/nothing-covered': Record<string, never>;
    'tables/nothing-changed': Record<string, never>;
    /** `least` is a step that moves a cell, `digit` what the table's own digits go by. */
    'tables/step-too-fine': { digit: number; least: number; decimals: number };
    /** Covered by the spray, and no pull has been there. */
    'tables/covered-not-driven': { cells: number };
    /** Covered by the curve, and the logged flow was short there. */
    'tables/fluid-was-short': { cells: number };
    /** Cells that an engine control reads without spray must not be stepped. */
    'tables/check-before-writing': Record<string, never>;
  }
}

export {};
