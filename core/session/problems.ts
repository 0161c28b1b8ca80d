import type { Expectation } from '../result/index.ts';

/** What can be wrong with a session, a car file or an edit. */
declare module '../result/result.ts' {
  interface ProblemFacts {
    'session/field-invalid': { field: string; expected: Expectation };
    'session/newer-version': { version: number; known: number };
    'session/no-version': Record<string, never>;
    'session/no-entry': { entryId: string };
    'session/no-run': { runId: string };
    'session/run-not-in-entry': { entryId: string; runId: string };
    'session/no-table': { tableId: string };
    'session/baseline-stays': Record<string, never>;
    'session/entry-has-runs': { entryId: string; runs: number };
    /** Also a copy of its folder: the same pulls would count twice. */
    'session/leans-on-itself': Record<string, never>;
    /** The ladder needs the setup sheet. */
    'session/no-setup': Record<string, never>;
    /** What a merge left to decide stands in something that is no longer there. */
    'session/conflict-gone': { path: string };
    'session/nothing-to-undo': Record<string, never>;
    'session/nothing-to-redo': Record<string, never>;
  }
}
