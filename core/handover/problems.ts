/** What can go wrong where a summary is printed or a logo is taken. */
declare module '../result/result.ts' {
  interface ProblemFacts {
    /** `asked`: the browser that was named in the environment and is not there. */
    'handover/no-browser': { asked: string | null };
    'handover/print-failed': { browser: string; detail: string };
    'handover/visit-is-this-one': { folder: string };
    'handover/logo-is-drawing': Record<string, never>;
    'handover/logo-not-a-picture': Record<string, never>;
    'handover/logo-damaged': Record<string, never>;
    'handover/logo-too-large': { size_bytes: number; most_bytes: number };
  }
}

export {};
