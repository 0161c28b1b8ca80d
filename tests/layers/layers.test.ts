import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { importGraph, importsOf, sourceFiles } from './import-graph.ts';
import { foldersWithIndex, insideOrders, rules } from './rules.ts';
import { clockAndChance, mentions } from './scan.ts';
import { backwardImports, circles, forbiddenImports, networkImports, privateImports } from './violations.ts';

const project = new URL('../..', import.meta.url).pathname;
const files = ['core', 'electron', 'renderer'].flatMap((folder) => sourceFiles(project, folder));
const imports = importGraph(project, files);
const read = (path: string): string => readFileSync(join(project, path), 'utf8');

describe('the sources', () => {
  it('are found at all', () => {
    expect(files.length).toBeGreaterThan(50);
    expect(imports.length).toBeGreaterThan(50);
  });

  it('import only what their layer allows', () => {
    expect(forbiddenImports(rules, imports)).toEqual([]);
  });

  it('reach another folder through its index.ts alone', () => {
    expect(privateImports(foldersWithIndex, imports)).toEqual([]);
  });

  it('run from general to particular inside a large area too', () => {
    expect(backwardImports(insideOrders, imports)).toEqual([]);
    const areas = Object.entries(insideOrders);
    const named = areas.flatMap(([area, order]) => order.map((folder) => `${area}/${folder}/`));
    expect(named.filter((folder) => !files.some((path) => path.startsWith(folder)))).toEqual([]);
  });

  it('import in no circle', () => {
    expect(circles(imports)).toEqual([]);
  });

  it('name only files that exist', () => {
    const missing = imports.filter((one) => !one.isPackage && !existsSync(join(project, one.to)));
    expect(missing).toEqual([]);
  });

  it('use no clock and no chance in core', () => {
    const core = files.filter((path) => path.startsWith('core/'));
    expect(core.flatMap((path) => clockAndChance(path, read(path)))).toEqual([]);
  });

  it('reach a network nowhere but in the shell that serves this machine', () => {
    expect(networkImports('electron/web', imports)).toEqual([]);
    const host = files.filter((path) => path.startsWith('electron/'));
    const callers = host.filter((path) =>
      ['fetch', 'WebSocket', 'EventSource'].some((name) => mentions(path, read(path), name)),
    );
    expect(callers).toEqual([]);
  });

  it('name ipcMain in one file at most', () => {
    const users = files.filter((path) => mentions(path, read(path), 'ipcMain'));
    expect(users.length, users.join(', ')).toBeLessThanOrEqual(1);
  });
});

describe('a planted import bites', () => {
  const planted: readonly (readonly [from: string, source: string])[] = [
    ['core/units/planted.ts', "import { fluids } from '../fluids/index.ts';"],
    ['core/fluids/planted.ts', "import type { Verdict } from '../compare/index.ts';"],
    ['core/compare/planted.ts', "type Session = import('../session/index.ts').Session;"],
    ['core/power/planted.ts', "import { readFile } from 'node:fs/promises';"],
    ['core/power/planted.ts', "export * from '../../electron/store/index.ts';"],
    ['core/power/planted.ts', "const read = await import('../../renderer/main.tsx');"],
    ['core/power/planted.ts', 'const read = await import(name);'],
    ['core/power/planted.ts', "const lodash = require('lodash');"],
    ['core/power/planted.ts', "import Papa from 'papaparse';"],
    ['electron/store/planted.ts', "import { host } from '../host/index.ts';"],
    ['electron/host/planted.ts', "import { createServer } from '../web/index.ts';"],
    ['electron/host/planted.ts', "import { app } from 'electron';"],
    ['electron/web/planted.ts', "import { openStore } from '../store/index.ts';"],
    ['electron/web/planted.ts', "import Store from 'electron-store';"],
    ['electron/cli/planted.ts', "import { BrowserWindow } from 'electron';"],
    ['electron/desktop/planted.ts', "import { fitPower } from '../../core/power/index.ts';"],
    ['renderer/planted.tsx', "import { host } from '../electron/host/index.ts';"],
    ['renderer/planted.tsx', "import { join } from 'node:path';"],
    ['renderer/planted.tsx', "new Worker(new URL('../electron/host/index.ts', import.meta.url));"],
    ['renderer/planted.tsx', "import _ from 'lodash';"],
    ['renderer/vite.config.ts', "import { sentence } from '../core/words/index.ts';"],
    ['elsewhere/planted.ts', "import { z } from 'zod';"],
  ];

  it.each(planted)('in %s: %s', (from, source) => {
    expect(forbiddenImports(rules, importsOf(from, source))).toHaveLength(1);
  });

  it('past an index.ts', () => {
    const source = "import { nozzleFlow } from '../delivery/nozzle-flow.ts';";
    expect(privateImports(foldersWithIndex, importsOf('core/injection/planted.ts', source))).toHaveLength(1);
  });

  it('from a general folder of an area to a particular one', () => {
    const source = "import type { Pull } from '../pulls/pull.ts';";
    expect(backwardImports(insideOrders, importsOf('core/log/table/planted.ts', source))).toHaveLength(1);
    expect(backwardImports(insideOrders, importsOf('core/log/pulls/lawful.ts', source))).toEqual([]);
  });

  it('in a circle, unless the circle is gone at run time', () => {
    const ring = [
      ...importsOf('core/log/a.ts', "import { b } from './b.ts';"),
      ...importsOf('core/log/b.ts', "import { type C } from './c.ts';"),
    ];
    const closed = [...ring, ...importsOf('core/log/c.ts', "export { a } from './a.ts';")];
    expect(circles(closed)).toEqual(['core/log/a.ts -> core/log/b.ts -> core/log/c.ts -> core/log/a.ts']);
    expect(circles([...ring, ...importsOf('core/log/c.ts', "import type { A } from './a.ts';")])).toEqual([]);
    expect(circles([...ring, ...importsOf('core/log/c.ts', "export type * from './a.ts';")])).toEqual([]);
  });

  it('as a way to a network', () => {
    const source = "import { request } from 'node:https';";
    expect(networkImports('electron/web', importsOf('electron/store/planted.ts', source))).toHaveLength(1);
    expect(networkImports('electron/web', importsOf('electron/web/lawful.ts', source))).toEqual([]);
    expect(mentions('electron/host/planted.ts', "await fetch('https://example.invalid')", 'fetch')).toBe(
      true,
    );
  });

  it('where it names no file', () => {
    const [one] = importsOf('core/units/planted.ts', "import './not-there.ts';");
    expect(one && existsSync(join(project, one.to))).toBe(false);
  });

  it.each([
    'Date.now()',
    "Date['now']()",
    'new Date()',
    'Date()',
    'Math.random()',
    "Math['random']()",
    'const { random } = Math;',
    'performance.now()',
    'crypto.randomUUID()',
    'setTimeout(() => 1, 5)',
  ])('as clock or chance: %s', (source) => {
    expect(clockAndChance('core/power/planted.ts', source).length).toBeGreaterThan(0);
  });

  it('as a second user of ipcMain, and not in a comment', () => {
    expect(mentions('electron/desktop/planted.ts', "import { ipcMain } from 'electron';", 'ipcMain')).toBe(
      true,
    );
    expect(mentions('electron/desktop/planted.ts', '// ipcMain stands elsewhere', 'ipcMain')).toBe(false);
  });
});

describe('a lawful import passes', () => {
  it.each([
    ['core/compare/lawful.ts', "import { ok } from '../result/index.ts';"],
    ['core/log/lawful.ts', "import Papa from 'papaparse';"],
    ['electron/host/lawful.ts', "import { openStore } from '../store/index.ts';"],
    ['renderer/lawful.tsx', "import { requests } from '../core/contract/index.ts';"],
    ['core/compare/lawful.ts', 'const when = new Date(text);'],
  ])('in %s: %s', (from, source) => {
    expect(forbiddenImports(rules, importsOf(from, source))).toEqual([]);
    expect(clockAndChance(from, source)).toEqual([]);
  });
});
