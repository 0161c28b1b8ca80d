import { mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { IdSchema } from '../../../core/session/index.ts';
import { pathInside, safeFolderName, slug } from '../../../electron/store/index.ts';
import { numberedName } from '../../../electron/store/safe-name.ts';

const folder = await mkdtemp(join(tmpdir(), 'names-'));
afterAll(() => rm(folder, { recursive: true }));

describe('a session name becomes a folder name', () => {
  it.each([
    ['2027-03-14 Fenmoor hatch', '2027-03-14 Fenmoor hatch'],
    ['Überholt & neu (2. Versuch)', 'Überholt & neu (2. Versuch)'],
    ['../../etc/passwd', 'etc-passwd'],
    ['..', 'session'],
    ['', 'session'],
    ['   ', 'session'],
    ['con', 'session con'],
    ['NUL.txt', 'session NUL.txt'],
    ['lpt1', 'session lpt1'],
    ['console', 'console'],
    ['dots and blanks. . .', 'dots and blanks'],
    ['a<b>c:d"e/f\\g|h?i*j', 'a-b-c-d-e-f-g-h-i-j'],
    ['line\nbreak\ttab\u0000null\u007f', 'line break tab null'],
    ['\u202egpj.exe', 'gpj.exe'],
    ['e\u0301te\u0301', 'été'],
    ['.hidden', 'hidden'],
    ['-rf', 'rf'],
    ['lone \ud800 half', 'lone half'],
    ['日本語 🏁', '日本語 🏁'],
  ])('%j is kept as %j', (name, expected) => expect(safeFolderName(name)).toBe(expected));

  it('whatever the name is, the disk takes it, gives it back unchanged and it stays in its folder', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'binary', maxLength: 300 }), async (name) => {
        const safe = safeFolderName(name);
        expect(Buffer.byteLength(safe)).toBeLessThanOrEqual(110);
        expect(safeFolderName(safe)).toBe(safe);
        const path = pathInside(folder, safe);
        expect(path).toBe(join(folder, safe));
        await writeFile(path ?? '', '');
        expect(await readdir(folder)).toEqual([safe]);
        await rm(path ?? '');
      }),
      { numRuns: 120, seed: 11 },
    );
  });

  it('a long name is cut between whole characters, also when a number is added', () => {
    const family = '👨‍👩‍👧‍👦';
    const cut = safeFolderName(family.repeat(20));
    expect(cut).toBe(family.repeat(4));
    expect(numberedName('x'.repeat(100), 12)).toBe(`${'x'.repeat(95)} (12)`);
    expect(numberedName('Fenmoor', 1)).toBe('Fenmoor');
  });

  it('an id made from any file name is an id of the session schema', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (name) => {
        expect(IdSchema.safeParse(slug(name, 'log')).success).toBe(true);
      }),
      { numRuns: 300, seed: 12 },
    );
    expect(slug('Été 3 – Spray AN.csv', 'log')).toBe('ete-3-spray-an-csv');
    expect(slug('nul', 'log')).toBe('log-nul');
    expect(slug('日本語', 'log')).toBe('log');
  });
});

describe('a path is kept inside its folder', () => {
  it.each([
    ['plain', ['runs', 'a', 'run.json'], '/s/runs/a/run.json'],
    ['up and down again', ['runs', '..', 'session.json'], '/s/session.json'],
    ['a name that starts with two dots', ['..a'], '/s/..a'],
    ['up', ['..', 'x'], null],
    ['up inside one part', ['runs/../../x'], null],
    ['absolute', ['/etc/passwd'], null],
    ['the folder itself', ['runs', '..'], null],
    ['a null byte', ['a\0b'], null],
    ['nothing', [''], null],
  ])('%s', (_, parts, expected) => expect(pathInside('/s', ...parts)).toBe(expected));

  it('a neighbour whose name begins the same way is outside', () => {
    expect(pathInside('/a/b', '../bc/x')).toBeNull();
  });
});
