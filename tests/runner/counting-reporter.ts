import { writeFileSync } from 'node:fs';
import type { Reporter, SerializedError, TestCase, TestModule } from 'vitest/node';
import type { StageResult } from './stage.ts';

/**
 * Writes what a run came to into the file that ONECHANGE_REPORT names. Vitest's own JSON leaves out why a
 * test was skipped.
 */
export default class CountingReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], errors: readonly SerializedError[]): void {
    const file = process.env.ONECHANGE_REPORT;
    if (file) writeFileSync(file, JSON.stringify(stageResult(modules, errors)));
  }
}

function stageResult(modules: readonly TestModule[], errors: readonly SerializedError[]): StageResult {
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
      ...errors.map((error) => `an error outside any test\n${text([error])}`),
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
