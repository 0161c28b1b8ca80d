import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectFolder } from '../../electron/launch/pinned-node.mjs';
import { clockTurners, keptIn, leavingsIn, sharedWorkerFolders } from '../support/shared-workers.ts';
import { importsOf } from './import-graph.ts';

const textOf = (path: string) => readFileSync(join(projectFolder, path), 'utf8');

const filesIn = (folder: string): readonly string[] =>
  readdirSync(join(projectFolder, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => `${folder}/${name.replaceAll('\\', '/')}`)
    .filter((path) => !clockTurners.includes(path));

/** Modules of the renderer that run when these files do. Core reaches none: the layers hold it to that. */
function rendererModulesUnder(files: readonly string[]): ReadonlySet<string> {
  const seen = new Set(files);
  for (const path of seen)
    for (const { to, isPackage, isType } of importsOf(path, textOf(path)))
      if (!isPackage && !isType && /^(tests|renderer)\/.*\.tsx?$/.test(to)) seen.add(to);
  return new Set([...seen].filter((path) => path.startsWith('renderer/')));
}

describe('test files that share a worker', () => {
  it.each(sharedWorkerFolders)('leave nothing behind in %s', (folder) => {
    expect(existsSync(join(projectFolder, folder))).toBe(true);
    const files = filesIn(folder);
    expect(files.length).toBeGreaterThan(0);
    const found = files.flatMap((path) => leavingsIn(textOf(path)).map((what) => `${path}: ${what}`));
    expect(found).toEqual([]);
  });

  it('reach nothing of the renderer that keeps something from one call to the next', () => {
    const modules = [...rendererModulesUnder(sharedWorkerFolders.flatMap(filesIn))];
    expect(modules.length).toBeGreaterThan(30);
    expect(modules.filter((path) => keptIn(textOf(path)) !== undefined)).toEqual([]);
  });

  it('would be told by a module that keeps something', () => {
    expect(rendererModulesUnder(['renderer/chart/load-plotly.ts'])).toContain(
      'renderer/chart/load-plotly.ts',
    );
    expect(keptIn(textOf('renderer/chart/load-plotly.ts'))).toMatch(/^let loading/);
    expect(keptIn(textOf('renderer/host/ask-shared.ts'))).toMatch(/^const sharedOf/);
  });

  it('are not those that turn the clock', () => {
    const turning = clockTurners.filter((path) => leavingsIn(textOf(path)).length > 0);
    expect(turning).toEqual(clockTurners);
  });

  it.each([
    "vi.mock('../clock.ts')",
    'vi.useFakeTimers()',
    "process.env.TZ = 'UTC'",
    'globalThis.fetch = double',
    'Array.prototype.at = double',
    'expect.extend({ toBeNear })',
    "import { createHost } from '../../../electron/host/index.ts'",
  ])('would be told by: %s', (planted) => {
    expect(leavingsIn(planted)).toHaveLength(1);
  });
});
