import { describe, expect, it } from 'vitest';
import { unwrap } from '../../../core/result/index.ts';
import {
  coveredCells,
  differenceView,
  guessAxes,
  maskOf,
  placeOf,
  readTable,
  setCells,
  stateOfCell,
  stepCells,
  writeTable,
} from '../../../core/tables/index.ts';
import { rpm } from '../../../core/units/index.ts';

const spark = [
  'Spark advance (deg)',
  'kPa\\rpm\t2000\t3000\t4000\t5000\t6000',
  '100\t25.0\t28.0\t30.5\t32.0\t33.0',
  '150\t18.0\t20.5\t23.0\t25.0\t26.5',
  '200\t10.0\t12.5\t15.0\t17.5\t19.0',
  '220\t8.0\t10.5\t13.0\t15.5\t17.0',
  '',
  'kept as it is',
  '',
].join('\r\n');
const table = unwrap(readTable(spark));
const all = table.down.map(() => table.across.map(() => true));
const loaded = table.down.map((load) => table.across.map(() => load >= 150));
const codes = (result: { ok: boolean; problems?: readonly { code: string }[] }) =>
  result.ok ? [] : (result.problems ?? []).map((p) => p.code);

describe('reading', () => {
  it('finds axes and numbers below a title, and leaves the rest alone', () => {
    expect(table.across).toEqual([2000, 3000, 4000, 5000, 6000]);
    expect(table.down).toEqual([100, 150, 200, 220]);
    expect(table.values[2]).toEqual([10, 12.5, 15, 17.5, 19]);
    expect(table.decimals).toBe(1);
    expect(writeTable(table)).toBe(spark);
  });
  it.each([
    ['comma', ',1000,2000\n50,1.5,2.5\n100,3,4'],
    ['semicolon and decimal comma', ';1000;2000\n50;1,5;2,5\n100;3,0;4,0\n'],
    ['quotes', '"x","1000","2000"\n"50","1.5","2.5"\n"100","3","4"'],
    ['blanks around cells', '\t 1000 \t 2000\n 50 \t1.5\t 2.5 \n100\t3\t4\t\n'],
    ['byte-order mark', '\uFEFF\t1000\t2000\n50\t1.5\t2.5\n100\t3\t4'],
    ['an axis that falls', '\t1000\t2000\n100\t3\t4\n50\t1.5\t2.5'],
  ])('%s: the same numbers, the same text back', (_, text) => {
    const read = unwrap(readTable(text));
    expect(read.across).toEqual([1000, 2000]);
    expect(read.values.flat().sort()).toEqual([1.5, 2.5, 3, 4]);
    expect(writeTable(read)).toBe(text);
  });
  it.each([
    ['tables/empty', '  \n'],
    ['tables/no-grid', 'hello\nworld'],
    ['tables/row-length', '\t1000\t2000\n50\t1\t2\n100\t1\t2\t3'],
    ['tables/axis-not-rising', '\t1000\t2000\t1500\n50\t1\t2\t3\n100\t1\t2\t3'],
    ['tables/cell-not-number', '\t1000\t2000\n50\t1\tx\n100\t1\t2'],
  ])('%s', (code, text) => {
    expect(codes(readTable(text))).toContain(code);
  });
  it('names all faults at once, with line and column', () => {
    const answer = readTable('\t1000\t2000\n50\t1\tx\n100\ty\t2');
    expect(answer.ok ? [] : answer.problems.map((p) => [p.where?.line, p.where?.column])).toEqual([
      [2, '3'],
      [3, '2'],
    ]);
  });
});

describe('stepping', () => {
  const question = { covered: loaded, step: 1, edge: 0, limit: null, neighbourLimit: null };
  it('steps covered cells and no other, whose text stays byte for byte', () => {
    const { table: after, changes } = unwrap(stepCells(table, question));
    expect(changes).toHaveLength(15);
    const [before, now] = [spark.split('\r\n'), writeTable(after).split('\r\n')];
    expect(now.slice(0, 3)).toEqual(before.slice(0, 3));
    expect(now[3]).toBe('150\t19.0\t21.5\t24.0\t26.0\t27.5');
    expect(now.slice(6)).toEqual(before.slice(6));
  });
  it('fades towards cells without spray', () => {
    const { table: after } = unwrap(stepCells(table, { ...question, edge: 1 }));
    expect(after.values[1]?.[0]).toBeCloseTo(18.5, 9);
    expect(after.values[2]?.[0]).toBeCloseTo(11, 9);
  });
  it('never passes the limit, and leaves what stands past it', () => {
    const { table: after, notes } = unwrap(stepCells(table, { ...question, covered: all, limit: 26 }));
    expect(Math.max(...(after.values[1] ?? []))).toBe(26.5);
    expect(after.values[1]?.[3]).toBe(26);
    expect(after.values[0]).toEqual(table.values[0]?.map((v) => (v < 26 ? Math.min(26, v + 1) : v)));
    expect(notes.map((n) => n.code)).toContain('tables/held-by-limit');
  });
  it('keeps neighbours within their limit, save where they were further apart before', () => {
    const one = table.down.map((_, r) => table.across.map((__, c) => r === 2 && c === 2));
    const stepped = unwrap(stepCells(table, { ...question, covered: one, step: 5, neighbourLimit: 3 }));
    expect(stepped.table.values[2]?.[2]).toBeCloseTo(15.5, 9);
    expect(stepped.notes.map((n) => n.code)).toContain('tables/held-by-neighbours');
  });
  it('steps down as well: retard or a lower target', () => {
    const { table: after } = unwrap(stepCells(table, { ...question, step: -0.5, limit: 9 }));
    expect(after.values[2]?.[0]).toBe(9.5);
    expect(after.values[3]?.[0]).toBe(8);
  });
  it('says so where nothing is covered, and asks for a look where something changed', () => {
    const none = table.down.map(() => table.across.map(() => false));
    expect(unwrap(stepCells(table, { ...question, covered: none })).notes.map((n) => n.code)).toEqual([
      'tables/nothing-covered',
    ]);
    expect(unwrap(stepCells(table, question)).notes.map((n) => n.code)).toContain(
      'tables/check-before-writing',
    );
  });
  it('says which cells were held, and by what', () => {
    const { held } = unwrap(stepCells(table, { ...question, covered: all, limit: 32.5 }));
    expect(held).toEqual([
      { row: 0, column: 3, by: 'limit' },
      { row: 0, column: 4, by: 'limit' },
    ]);
  });
  it('builds no cliff: steps that pile up part neighbours by one step at most', () => {
    const right = maskOf(table, (r, c) => r >= 2 && c >= 2);
    const step = { ...question, covered: right };
    const once = unwrap(stepCells(table, step)).table;
    const twice = unwrap(stepCells(once, { ...step, since: table }));
    // The rim may stand one step out, the cells behind it two.
    expect(twice.table.values.slice(2)).toEqual([
      [10, 12.5, 16, 18.5, 20],
      [8, 10.5, 14, 17.5, 19],
    ]);
    expect(twice.held.filter((h) => h.by === 'neighbours').length).toBeGreaterThan(0);
    const thrice = unwrap(stepCells(twice.table, { ...step, since: table })).table;
    expect(thrice.values[3]).toEqual([8, 10.5, 14, 17.5, 19]);
  });
  it('refuses a step of nothing', () => {
    expect(codes(stepCells(table, { ...question, step: 0 }))).toEqual(['tables/step-not-number']);
  });
  it('rounds towards the old value at the digits of the control', () => {
    const { table: after } = unwrap(stepCells(table, { ...question, step: 0.37 }));
    expect(after.values[2]?.[0]).toBe(10.3);
  });
});

describe('cells that the spray covers', () => {
  const axes = guessAxes(table);
  const spray = (state: { boost: number }) => ({
    needed: 1,
    delivered: state.boost >= 45e3 ? 1 : 0.2,
  });
  it('guesses engine speed across and absolute load down', () => {
    expect(axes).toEqual({ engineSpeed: 'across', load: { kind: 'absolute', unit: 'kPa' } });
    expect(stateOfCell(table, axes, 2, 1, 100e3)).toEqual({ engineSpeed_rad_s: rpm(3000), boost: 100e3 });
  });
  it('takes cells with enough fluid, and of those only driven ones', () => {
    const fed = coveredCells(table, axes, 100e3, spray, null);
    expect(fed.covered.map((l) => l.filter(Boolean).length)).toEqual([0, 5, 5, 5]);
    const driven = [3000, 4000, 5000].map((n) => ({ engineSpeed_rad_s: rpm(n), boost: 110e3 }));
    const some = coveredCells(table, axes, 100e3, spray, driven);
    expect(some.covered[2]).toEqual([false, true, true, true, false]);
    expect(some.covered[1]).toEqual([false, false, false, false, false]);
    expect(some.notDriven).toBe(9);
  });
  it('places a trace between cells, held at the rim', () => {
    expect(placeOf(table, axes, { engineSpeed_rad_s: rpm(3500), boost: 75e3 }, 100e3)).toEqual({
      row: 1.5,
      column: 1.5,
    });
    expect(placeOf(table, axes, { engineSpeed_rad_s: rpm(9000), boost: -80e3 }, 100e3)).toEqual({
      row: 0,
      column: 4,
    });
  });
});

describe('cells by hand', () => {
  const one = maskOf(table, (r, c) => r === 1 && c === 1);
  it('takes a value at the digits of the table and leaves every other byte alone', () => {
    const set = unwrap(setCells(table, one, 19.96, null));
    expect(writeTable(set)).toBe(spark.replace('20.5', '20.0'));
  });
  it('holds the limit as it will be written, and lets a cell come down to anything', () => {
    expect(codes(setCells(table, one, 21.06, { value: 21.06, unit: 'deg' }))).toEqual(['tables/past-limit']);
    expect(unwrap(setCells(table, one, 20, { value: 15, unit: 'deg' })).values[1]?.[1]).toBe(20);
  });
});

describe('cells that the spray covers over throttle, and where the flow was logged', () => {
  const lines = ['\t2000\t3000\t4000', '0\t5\t5\t5', '50\t5\t5\t5', '100\t5\t5\t5'];
  const throttles = unwrap(readTable(lines.join('\n')));
  const spray = (state: { boost: number }) => ({ needed: 1, delivered: state.boost >= 45e3 ? 1 : 0 });
  const at = (n: number, boost: number, fluidFlow?: number) => ({
    engineSpeed_rad_s: rpm(n),
    boost,
    throttle: 1,
    ...(fluidFlow === undefined ? {} : { fluidFlow }),
  });
  const axes = guessAxes(throttles);
  it('a cell over throttle is covered only where logged boost was fed', () => {
    expect(axes.load).toEqual({ kind: 'throttle', unit: '%' });
    expect(coveredCells(throttles, axes, 100e3, spray, null).covered.flat()).not.toContain(true);
    const { covered } = coveredCells(throttles, axes, 100e3, spray, [at(2000, 20e3), at(4000, 100e3)]);
    expect(covered[2]).toEqual([false, false, true]);
    expect(covered[1]).toEqual([false, false, false]);
  });
  it('a cell is left alone where the logged flow fell short of the curve', () => {
    const fed = coveredCells(throttles, axes, 100e3, spray, [at(4000, 100e3, 0.95)]);
    expect([fed.covered[2]?.[2], fed.short]).toEqual([true, 0]);
    const starved = coveredCells(throttles, axes, 100e3, spray, [at(4000, 100e3, 0.4)]);
    expect([starved.covered[2]?.[2], starved.short]).toEqual([false, 1]);
  });
});

describe('difference', () => {
  it('shows after minus before at the digits of the control', () => {
    const after = unwrap(
      stepCells(table, { covered: loaded, step: 0.2, edge: 0, limit: null, neighbourLimit: null }),
    ).table;
    const view = unwrap(differenceView(table, after));
    expect([view.highest, view.lowest, view.changes.length]).toEqual([0.2, 0, 15]);
    expect(view.delta[0]).toEqual([0, 0, 0, 0, 0]);
  });
  it('refuses tables of another shape or other axes', () => {
    const small = unwrap(readTable('\t1000\t2000\n50\t1\t2\n100\t3\t4'));
    expect(codes(differenceView(table, small))).toEqual(['tables/shape-differs']);
    const moved = unwrap(readTable(spark.replace('5000', '5500')));
    expect(codes(differenceView(table, moved))).toEqual(['tables/axes-differ']);
  });
});
