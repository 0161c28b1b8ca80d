import { describe, expect, it } from 'vitest';
import { unwrap } from '../../../core/result/index.ts';
import {
  axisFaults,
  cellFromSi,
  cellInSi,
  dangerousCells,
  guessMeaning,
  readTable,
  type TableAxes,
} from '../../../core/tables/index.ts';

const axes: TableAxes = { engineSpeed: 'across', load: { kind: 'absolute', unit: 'kPa' } };
const table = (cells: string) => unwrap(readTable(`\t2000\t4000\n60\t${cells}\n180\t${cells}`));
const spark = { kind: 'spark', unit: 'deg', isAbsolute: false } as const;
const lambda = { kind: 'lambda', unit: 'lambda', isAbsolute: false } as const;

describe('what a table is', () => {
  it.each([
    ['numbers around one are lambda', [[0.78, 1]], '', { kind: 'lambda', unit: 'lambda' }],
    ['hundreds are boost', [[120, 220]], '', { kind: 'boost', unit: 'kPa', isAbsolute: true }],
    ['hundreds from nothing are gauge', [[0, 120]], '', { kind: 'boost', unit: 'kPa', isAbsolute: false }],
    ['degrees past any air/fuel ratio are spark', [[5, 34]], '', { kind: 'spark', unit: 'deg' }],
    ['a word above decides', [[11, 14.7]], 'AFR target', { kind: 'lambda', unit: 'AFR' }],
    ['a word above decides, in German too', [[11, 14.7]], 'Zündwinkel', { kind: 'spark', unit: 'deg' }],
  ])('%s', (_, values, title, expected) => {
    expect(guessMeaning(values, title)).toMatchObject(expected);
  });
  it('eleven to fourteen could be spark or a mixture: a person decides', () => {
    expect(guessMeaning([[11, 14.7]], '')).toBeNull();
  });
  it('boost written as manifold pressure goes to gauge and back', () => {
    const of = { kind: 'boost', unit: 'kPa', isAbsolute: true } as const;
    expect(cellInSi(210, of, 100e3)).toBeCloseTo(110e3, 6);
    expect(cellFromSi(110e3, of, 100e3)).toBeCloseTo(210, 9);
  });
});

describe('cells that no engine should get', () => {
  it('a lost decimal point is refused with its line and column', () => {
    const found = dangerousCells(table('12.5\t125'), spark, axes, 100e3);
    expect(found.map((p) => [p.code, p.where])).toEqual([
      ['tables/cell-not-plausible', { line: 2, column: '3' }],
      ['tables/cell-not-plausible', { line: 3, column: '3' }],
    ]);
  });
  it('what part load may have is refused under boost', () => {
    expect(dangerousCells(table('1.15\t0.9'), lambda, axes, 100e3).map((p) => p.where?.line)).toEqual([3]);
    expect(dangerousCells(table('52\t20'), spark, axes, 100e3).map((p) => p.code)).toEqual([
      'tables/cell-dangerous',
    ]);
  });
  it('a sound table passes', () => {
    expect(dangerousCells(table('12.5\t30'), spark, axes, 100e3)).toEqual([]);
    expect(axisFaults(table('1\t2'), axes)).toEqual([]);
  });
  it('thousands with a comma are no engine speed, and bar is no kPa', () => {
    const commas = unwrap(readTable('\t1,000\t2,000\t8,500\n60\t1\t2\t3\n180\t1\t2\t3'));
    expect(axisFaults(commas, axes).map((p) => p.code)).toEqual(['tables/no-engine-speed']);
    const bar = { engineSpeed: 'across', load: { kind: 'gauge', unit: 'bar' } } as const;
    expect(axisFaults(table('1\t2'), bar).map((p) => p.code)).toEqual(['tables/load-not-plausible']);
  });
});
