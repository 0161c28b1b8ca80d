/** What is worth saying beside the review. */
declare module '../result/result.ts' {
  interface NoteFacts {
    /** Liquid that stops a piston [m^3], and how soon the planned flow through a stuck valve is that much [s]. */
    'fit/lock-volume': { volume: number; seconds: number };
  }
}

export {};
