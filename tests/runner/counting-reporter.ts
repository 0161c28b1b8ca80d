import { writeFileSync } from 'node:fs';
import type { Reporter, SerializedError, TestCase, TestModule } from 'vitest/node';
import type { StageResult } from './stage.ts';

/** What a run of several folders of tests/ came to. */
export type VitestReport = {
  readonly folders: Readonly<Record<string, StageResult>>;
  /** Errors outside any test. */
  readonly errors: readonly string[];
};

/**
 * Writes what a run came to into the file that ONECHANGE_REPORT names. Vitest's own JSON leaves out why a
 * test was skipped.
 */
export default class CountingReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], errors: readonly SerializedError[]): void {
    const file = process.env.ONECHANGE_REPORT;
    if (file) writeFileSync(file, JSON.stringify(report(modules, errors)));
  }
}

function report(modules: readonly TestModule[], errors: readonly SerializedError[]): VitestReport {
  const folders = Object.groupBy(modules, ({ relativeModuleId }) => relativeModuleId.split('/')[1] ?? '');
  return {
    folders: Object.fromEntries(
      Object.entries(folders).map(([name, found]) => [name, stageResult(found ?? [])]),
    ),
    errors: errors.map((error) => `an error outside any test\n${text([error])}`),
  };
}

function stageResult(modules: readonly TestModule[]): StageResult {
  const tests = modules.flatMap((module) => [...module.children.allTests()]);
  const failed = tests.filter((test) => test.result().state === 'failed');
  return {
    passed: tests.filter((test) => test.result().state === 'passed').length,
    failures: [
      ...failed.map((test) => `${name(test)}\n${text(test.result().errors ?? [])}`),
      // A file that fell over while loading, or a hook outside its tests.
      ...modules.flatMap((module) => {
        const found = [module, ...module.children.allSuites()].flatMap((suite) => suite.errors());
        return found.length > 0 ? [`${module.relativeModuleId}\n${text(found)}`] : [];
      }),
    ],
    skips: tests.flatMap((test) => {
      const result = test.result();
      if (result.state === 'pending') return [`${name(test)} (never ran)`];
      if (result.state !== 'skipped') return [];
      return [`${name(test)} (${result.note ?? 'no reason given'})`];
    }),
  };
}

function name(test: TestCase): string {
  return `${test.module.relativeModuleId}: ${test.fullName}`;
}

function text(errors: readonly { readonly message: string; readonly stack?: string }[]): string {
  return errors.map((error) => error.stack ?? error.message).join('\n');
}
