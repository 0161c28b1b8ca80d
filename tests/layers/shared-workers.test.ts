import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectFolder } from '../../electron/launch/pinned-node.mjs';
import { leavingsIn, sharedWorkerFolders } from '../support/shared-workers.ts';

describe('test files that share a worker', () => {
  it.each(sharedWorkerFolders)('leave nothing behind in %s', (folder) => {
    const place = join(projectFolder, folder);
    expect(existsSync(place)).toBe(true);
    const files = readdirSync(place, { recursive: true, encoding: 'utf8' }).filter((name) =>
      /\.tsx?$/.test(name),
    );
    expect(files.length).toBeGreaterThan(0);
    const found = files.flatMap((name) =>
      leavingsIn(readFileSync(join(place, name), 'utf8')).map((what) => `${name}: ${what}`),
    );
    expect(found).toEqual([]);
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
