import type { Expectation } from '../result/index.ts';

/** What can go wrong between a screen and the host. */
declare module '../result/result.ts' {
  interface ProblemFacts {
    'contract/unknown-request': { name: string };
    'contract/input-invalid': { request: string; field: string; expected: Expectation };
    'contract/no-session': Record<string, never>;
    /** A window asks for a change of a session that is not the open one any more. */
    'contract/other-session': { asked: string; open: string };
    'contract/read-only': { because: string };
    'contract/cancelled': Record<string, never>;
    'contract/host-gone': Record<string, never>;
    /** Our own fault, with the first line of what was thrown; details go to the log file. */
    'contract/internal': { detail: string };
    'contract/refused': { why: string };
  }
}
