import { join } from 'node:path';
import { projectFolder } from '../../electron/launch/pinned-node.mjs';
import { runCommand } from './run-command.ts';
import { counts, failedOnly, passedOnly, type Stage, type StageResult } from './stage.ts';

const tool = (...path: readonly string[]): string => join(projectFolder, 'node_modules', ...path);

/** One command as one check: it passes when it ends with 0. */
async function check(name: string, script: string, args: readonly string[]): Promise<StageResult> {
  const { code, output } = await runCommand(process.execPath, [script, ...args]);
  return code === 0 ? passedOnly(1) : failedOnly(`${name}\n${output.trim()}`);
}

export const lint: Stage = {
  name: 'lint',
  run: () => check('biome', tool('@biomejs', 'biome', 'bin', 'biome'), ['check', '--error-on-warnings', '.']),
};

/**
 * Each folder has its own compiler settings: that is how core is kept free of DOM and Node. The two rows are checked
 * at once, each by one checker: four of them per project, as is usual, read the shared types four times, which takes
 * two cores twice as long.
 */
const projects = [
  ['tests', 'core'],
  ['renderer', 'electron'],
];

export const types: Stage = {
  name: 'types',
  run: async () => {
    const results: StageResult[] = [];
    const compiler = tool('typescript', 'bin', 'tsc');
    const checkRow = async (row: readonly string[]) => {
      for (const project of row)
        results.push(await check(`tsc -p ${project}`, compiler, ['-p', project, '--checkers', '1']));
    };
    await Promise.all(projects.map(checkRow));
    return {
      passed: counts(results).passed,
      failures: results.flatMap((one) => one.failures),
      skips: [],
    };
  },
};
