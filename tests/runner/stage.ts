/** What one stage of the tests came to. */
export type StageResult = {
  readonly passed: number;
  /** One line of what failed, with details below it. */
  readonly failures: readonly string[];
  /** One line per skipped test: its name and the reason. */
  readonly skips: readonly string[];
};

export type Stage = { readonly name: string; readonly run: () => Promise<StageResult> };

/** Stages that run at once, with what each of them came to. */
export type JointStages = {
  readonly names: readonly string[];
  /** @param names those of them that are wanted */
  readonly run: (names: readonly string[]) => Promise<ReadonlyMap<string, StageResult>>;
};

/** A stage that runs alone. */
export const alone = ({ name, run }: Stage): JointStages => ({
  names: [name],
  run: async () => new Map([[name, await run()]]),
});

export const passedOnly = (passed: number): StageResult => ({ passed, failures: [], skips: [] });

export const failedOnly = (...failures: readonly string[]): StageResult => ({
  passed: 0,
  failures,
  skips: [],
});

export type Counts = { readonly passed: number; readonly failed: number; readonly skipped: number };

export function counts(results: readonly StageResult[]): Counts {
  return results.reduce(
    (sum, one) => ({
      passed: sum.passed + one.passed,
      failed: sum.failed + one.failures.length,
      skipped: sum.skipped + one.skips.length,
    }),
    { passed: 0, failed: 0, skipped: 0 },
  );
}

/** `12 passed, 0 failed`, and `, 1 skipped` where there are any. Other programs read this line. */
export function countsLine({ passed, failed, skipped }: Counts): string {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
}
