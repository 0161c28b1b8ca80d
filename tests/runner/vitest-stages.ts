import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { projectFolder } from '../../electron/launch/pinned-node.mjs';
import type { VitestReport } from './counting-reporter.ts';
import { runCommand } from './run-command.ts';
import { failedOnly, type JointStages, type StageResult } from './stage.ts';

/**
 * All tests under some folders of tests/, each folder a stage. One run for all of them: at the end of each run one core
 * waits for the other.
 */
export function vitestStages(folders: readonly string[], limit_s = 1800): JointStages {
  return {
    names: folders,
    run: async (names) => {
      const folder = mkdtempSync(join(tmpdir(), 'onechange-report-'));
      try {
        const report = join(folder, 'report.json');
        const finished = await runCommand(
          process.execPath,
          [
            join(projectFolder, 'node_modules', 'vitest', 'vitest.mjs'),
            'run',
            ...['--config', 'tests/vitest.config.ts'],
            ...['--reporter=default', '--reporter=./tests/runner/counting-reporter.ts'],
            ...names.map((name) => `tests/${name}/`),
          ],
          { isLoud: true, limit_s, env: { ONECHANGE_REPORT: report, NO_COLOR: '1' } },
        );
        if (finished.isTimedOut) return allFailed(names, `not finished after ${limit_s} s`);
        if (!existsSync(report))
          return allFailed(names, `no report, or no test at all\n${lastLines(finished.output)}`);
        const told = JSON.parse(readFileSync(report, 'utf8')) as VitestReport;
        const results = readVitestReport(told, names);
        if (finished.code === 0 || [...results.values()].some(({ failures }) => failures.length > 0))
          return results;
        return results.set(outside, failedOnly(`an error outside any test\n${lastLines(finished.output)}`));
      } finally {
        rmSync(folder, { recursive: true, force: true });
      }
    },
  };
}

/** Name of what belongs to none of the stages. */
const outside = 'outside';

/** What each stage came to. A stage that found no test fails: a list that went empty must show. */
export function readVitestReport(
  { folders, errors }: VitestReport,
  names: readonly string[],
): Map<string, StageResult> {
  const results = new Map(
    names.map((name) => [name, folders[name] ?? failedOnly(`${name}: no test was found`)]),
  );
  return errors.length > 0 ? results.set(outside, failedOnly(...errors)) : results;
}

function allFailed(names: readonly string[], why: string): Map<string, StageResult> {
  return new Map(names.map((name) => [name, failedOnly(`${name}: ${why}`)]));
}

function lastLines(output: string): string {
  return output.trim().split('\n').slice(-20).join('\n');
}
