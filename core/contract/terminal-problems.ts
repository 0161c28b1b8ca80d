/** What can be wrong with a command line. */
declare module '../result/result.ts' {
  interface ProblemFacts {
    'terminal/unknown-verb': { verb: string; known: string };
    'terminal/unknown-option': { option: string };
    'terminal/value-missing': { option: string };
    'terminal/argument-missing': { what: string; usage: string };
    'terminal/not-a-choice': { option: string; value: string; choices: string };
    'terminal/file-unreadable': { detail: string };
    'terminal/not-json': { detail: string };
    'terminal/no-pulls': { side: string };
    'terminal/damaged': { what: string };
  }
}

export {};
