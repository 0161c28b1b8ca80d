import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { installWhatIsMissing, missingPackages } from '../../../electron/launch/install.mjs';

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'onechange-install-'));
  write('package-lock.json', {
    '': { name: 'onechange' },
    'node_modules/zod': { version: '4.0.0' },
    'node_modules/a/node_modules/zod': { version: '3.0.0' },
    'node_modules/@scope/windows-only': { version: '1.0.0', optional: true },
  });
});

afterEach(() => rmSync(folder, { recursive: true, force: true }));

function write(path: string, packages: Record<string, object>): void {
  mkdirSync(join(folder, path, '..'), { recursive: true });
  writeFileSync(join(folder, path), JSON.stringify({ lockfileVersion: 3, packages }));
}

function install(packages: Record<string, { version: string }>): void {
  for (const path of Object.keys(packages)) mkdirSync(join(folder, path), { recursive: true });
  write('node_modules/.package-lock.json', packages);
}

it('a fresh clone lacks every package but those of other platforms', () => {
  expect(missingPackages(folder)).toEqual(['zod@4.0.0', 'zod@3.0.0']);
});

it('a complete installation lacks nothing, and nothing is run or said', () => {
  install({
    'node_modules/zod': { version: '4.0.0' },
    'node_modules/a/node_modules/zod': { version: '3.0.0' },
  });
  const said: string[] = [];
  expect(missingPackages(folder)).toEqual([]);
  expect(installWhatIsMissing(folder, (line) => said.push(line))).toBe(true);
  expect(said).toEqual([]);
});

it('a package of another version than the lock file names is missing', () => {
  install({
    'node_modules/zod': { version: '4.0.1' },
    'node_modules/a/node_modules/zod': { version: '3.0.0' },
  });
  expect(missingPackages(folder)).toEqual(['zod@4.0.0']);
});

it('a package whose folder was deleted is missing, whatever the list says', () => {
  install({
    'node_modules/zod': { version: '4.0.0' },
    'node_modules/a/node_modules/zod': { version: '3.0.0' },
  });
  rmSync(join(folder, 'node_modules/zod'), { recursive: true });
  expect(missingPackages(folder)).toEqual(['zod@4.0.0']);
});

it('an installation that ended before its list was written counts as missing', () => {
  mkdirSync(join(folder, 'node_modules/zod'), { recursive: true });
  expect(missingPackages(folder)).toHaveLength(2);
});
