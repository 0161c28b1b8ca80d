import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { pinnedNode, projectFolder, runsTypeScript } from '../../../electron/launch/pinned-node.mjs';

it.each([
  ['20.19.0', false],
  ['22.17.1', false],
  ['22.18.0', true],
  ['23.5.0', false],
  ['23.6.0', true],
  ['24.0.0', true],
  ['26.1.0', true],
])('Node %s runs the sources as they stand: %s', (version, expected) => {
  expect(runsTypeScript(version)).toBe(expected);
});

it('the pinned Node comes before the one that runs us', () => {
  const folder = mkdtempSync(join(tmpdir(), 'onechange-node-'));
  expect(pinnedNode(folder)).toBe(process.execPath);
  const name = process.platform === 'win32' ? 'node.exe' : 'node';
  mkdirSync(join(folder, 'node_modules', 'node', 'bin'), { recursive: true });
  writeFileSync(join(folder, 'node_modules', 'node', 'bin', name), '');
  expect(pinnedNode(folder)).toBe(join(folder, 'node_modules', 'node', 'bin', name));
});

it('this checkout has its pinned Node', () => {
  expect(pinnedNode()).toContain(join(projectFolder, 'node_modules', 'node'));
});
