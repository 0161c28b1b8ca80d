import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { projectFolder } from '../../electron/launch/pinned-node.mjs';
import { runCommand } from './run-command.ts';
import { failedOnly, type Stage, type StageResult } from './stage.ts';

/** All tests under one folder of tests/. A stage that found none fails: a list that went empty must show. */
export function vitestStage(name: string, limit_s = 900): Stage {
  return {
    name,
    run: async () => {
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
            `tests/${name}/`,
          ],
          { isLoud: true, limit_s, env: { ONECHANGE_REPORT: report, NO_COLOR: '1' } },
        );
        if (finished.isTimedOut) return failedOnly(`${name}: not finished after ${limit_s} s`);
        if (!existsSync(report))
          return failedOnly(`${name}: no report, or no test at all\n${lastLines(finished.output)}`);
        const result = JSON.parse(readFileSync(report, 'utf8')) as StageResult;
        if (result.passed + result.failures.length + result.skips.length === 0)
          return failedOnly(`${name}: no test was found`);
        if (finished.code === 0 || result.failures.length > 0) return result;
        return { ...result, failures: [`${name}: an error outside any test\n${lastLines(finished.output)}`] };
      } finally {
        rmSync(folder, { recursive: true, force: true });
      }
    },
  };
}

function lastLines(output: string): string {
  return output.trim().split('\n').slice(-20).join('\n');
}
