/** What can be wrong with a log file. */
declare module '../result/result.ts' {
  interface ProblemFacts {
    /** Nothing in the file, or only blanks. */
    'log/empty': { size: number };
  }
}

export {};
