import { describe, expect, it } from 'vitest';
import { evaluateFormula } from '../../../core/log/formula/evaluate-formula.ts';
import type { Expression } from '../../../core/log/formula/expression.ts';
import {
  type Channel,
  type DerivedChannel,
  DerivedChannelSchema,
  deriveChannel,
  type Log,
  loadFormulaParser,
  type QuantityId,
  withDerivedChannels,
} from '../../../core/log/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { metricUnits } from '../../../core/units/index.ts';
import { createShow, problemText } from '../../../core/words/index.ts';

const parser = await loadFormulaParser();

function channel(column: string, quantity: QuantityId | null, values: number[]): Channel {
  return {
    column,
    quantity,
    unit: '',
    confidence: 1,
    reason: null,
    values: Float64Array.from(values),
    flags: new Uint8Array(values.length),
  };
}

const log: Log = {
  file: 'a.csv',
  time: Float64Array.of(0, 0.1, 0.2, 0.3, 0.4),
  channels: [
    channel('Boost', 'boost', [0, 20e3, 50e3, 100e3, Number.NaN]),
    channel('Baro', 'barometricPressure', [1e5, 1e5, 1e5, 1e5, 1e5]),
    channel('rpm', 'engineSpeed', [200, 210, 230, 260, 300]),
    channel('Lambda', 'lambda', [0.9, 0.85, 0.8, 0.8, 0.8]),
    channel('Bank 2 (odd)', null, [1, 2, 3, 4, 5]),
  ],
  segments: [{ from: 0, to: 5 }],
  warnings: [],
  style: {
    encoding: 'utf-8',
    delimiter: ',',
    decimal: '.',
    headerLine: 1,
    firstDataLine: 2,
    timeFormat: 's',
  },
};

const derived = (formula: string, more: Partial<DerivedChannel> = {}) =>
  DerivedChannelSchema.parse({ name: 'x', formula, kind: 'number', ...more });
const valuesOf = (formula: string, more: Partial<DerivedChannel> = {}) =>
  [...unwrap(deriveChannel(log, derived(formula, more), parser)).values].map((v) => Number(v.toFixed(9)));
const codeOf = (formula: string, more: Partial<DerivedChannel> = {}) => {
  const result = deriveChannel(log, derived(formula, more), parser);
  return result.ok ? 'ok' : result.problems[0].code;
};

describe('a channel by formula', () => {
  it('reckons in SI, and a gap in gives a gap out', () => {
    expect(valuesOf('(boost + barometricPressure) / barometricPressure')).toEqual([
      1,
      1.2,
      1.5,
      2,
      Number.NaN,
    ]);
  });

  it('takes units behind numbers', () => {
    expect(valuesOf('max(boost - 20 kPa, 0 kPa)', { kind: 'pressure' })).toEqual([
      0,
      0,
      30e3,
      80e3,
      Number.NaN,
    ]);
    expect(valuesOf('lambda * 14.7')[0]).toBeCloseTo(13.23, 9);
  });

  it('knows the slope against time and the mean over a window', () => {
    // 200, 210, 230 ... rad/s at a tenth of a second: (230 - 200) / 0.2 s = 150 in the middle of the first three.
    expect(valuesOf('rate(engineSpeed) * 1 s / (1 rpm) * 0.104719755')[1]).toBeCloseTo(150, 4);
    expect(valuesOf('smooth(lambda, 0.2 s)')[1]).toBeCloseTo((0.9 + 0.85 + 0.8) / 3, 9);
  });

  it('forgets a number of any size once its window has passed it', () => {
    const time = Float64Array.from({ length: 40 }, (_, i) => i / 10);
    const spiked = time.map((_, i) => (i === 10 ? 1e300 : 5));
    const smooth: Expression = {
      kind: 'call',
      name: 'smooth',
      of: [
        { kind: 'symbol', name: 'x' },
        { kind: 'constant', value: 0.3 },
      ],
    };
    const means = evaluateFormula(smooth, new Map([['x', spiked]]), time);
    expect([...means.slice(15)]).toEqual(Array(25).fill(5));
  });

  it('chooses by a test, and a test on a gap is a gap', () => {
    expect(valuesOf('boost > 30 kPa ? 1 : 0')).toEqual([0, 0, 1, 1, Number.NaN]);
    expect(valuesOf('0 kPa <= boost < 50 kPa')).toEqual([1, 1, 0, 0, Number.NaN]);
    expect(valuesOf('not (lambda > 0.82)')).toEqual([0, 0, 1, 1, 1]);
  });

  it('gives a column without a quantity a name', () => {
    const inputs = [{ symbol: 'bank2', column: 'Bank 2 (odd)', kind: 'number' as const }];
    expect(valuesOf('bank2 ^ 2', { inputs })).toEqual([1, 4, 9, 16, 25]);
  });

  it('can use the derived channel before it, and tells the faults of each', () => {
    const { log: more, problems } = withDerivedChannels(
      log,
      [
        derived('boost / barometricPressure', { name: 'ratio', quantity: 'load', kind: 'share' }),
        derived('load * 2', { name: 'twice' }),
        derived('nothing + 1', { name: 'broken' }),
      ],
      parser,
    );
    expect([...(more.channels.at(-1)?.values ?? [])].slice(0, 4)).toEqual([0, 0.4, 1, 2]);
    expect(problems).toMatchObject([
      { code: 'log/formula-symbol-unknown', facts: { symbol: 'nothing' }, where: { column: 'broken' } },
    ]);
  });
});

describe('units of a formula', () => {
  it.each([
    ['boost + lambda', 'log/formula-units'],
    ['boost + 3', 'log/formula-units'],
    ['boost > 3', 'log/formula-units'],
    ['log(boost)', 'log/formula-units'],
    ['lambda ^ boost', 'log/formula-units'],
    ['min(boost, lambda)', 'log/formula-units'],
    ['smooth(boost, 3)', 'log/formula-units'],
    ['boost', 'log/formula-result-units'],
    ['boost / barometricPressure', 'ok'],
    ['sqrt(boost * boost) / boost', 'ok'],
    ['log(boost / (1 kPa))', 'ok'],
    ['smooth(boost, 0.2 s) / boost', 'ok'],
    ['smooth(boost, 2 * 100 ms) / boost', 'ok'],
    ['smooth(boost, -1 s) / boost', 'log/formula-window'],
    ['smooth(boost, 0 s) / boost', 'log/formula-window'],
    ['smooth(boost, time) / boost', 'log/formula-window'],
    ['smooth(boost, smooth(time, 0.1 s)) / boost', 'log/formula-window'],
    ['rate(boost) / boost * 1 s', 'ok'],
  ])('%s: %s', (formula, code) => {
    expect(codeOf(formula)).toBe(code);
  });

  it('a quantity is only claimed by what can measure it', () => {
    expect(codeOf('lambda', { quantity: 'boost' })).toBe('log/formula-result-units');
  });
});

describe('a number beside a share, an angle or a lambda', () => {
  const driven: Log = {
    ...log,
    channels: [
      channel('Pedal', 'pedal', [0.1, 0.5, 0.95, 1, 1]),
      channel('Spark', 'sparkAdvance', [0.4, 0.35, 0.3, 0.2, 0.1]),
      channel('Lambda', 'lambda', [1, 0.9, 0.85, 0.8, 0.8]),
    ],
  };
  const result = (formula: string) => deriveChannel(driven, derived(formula), parser);

  it.each([
    ['pedal > 90 ? 1 : 0', 'pedal > 90 → 90 %'],
    ['1 + (smooth(pedal, 1 s) - 50)', 'pedal - 50 → 50 %'],
    ['sparkAdvance - 20', 'sparkAdvance - 20 → 20 deg'],
    ['max(-5, sparkAdvance)', 'sparkAdvance max -5 → -5 deg'],
    ['lambda < 11.5', 'lambda < 11.5 → 11.5 AFR'],
  ])('%s needs its unit', (formula, detail) => {
    expect(result(formula)).toMatchObject({ problems: [{ code: 'log/formula-units', facts: { detail } }] });
  });

  it.each([
    ['pedal > 90% ? 1 : 0', [0, 0, 1, 1, 1]],
    ['pedal > 0.9 ? 1 : 0', [0, 0, 1, 1, 1]],
    ['sparkAdvance > 18 deg', [1, 1, 0, 0, 0]],
    ['lambda < 12.6 AFR', [0, 0, 1, 1, 1]],
    ['lambda * 14.7 > 12', [1, 1, 1, 0, 0]],
  ])('%s stands', (formula, values) => {
    expect([...unwrap(result(formula)).values]).toEqual(values);
  });
});

it('no slope and no mean reaches across a clock that starts anew', () => {
  const twice: Log = {
    ...log,
    time: Float64Array.of(100, 100.1, 100.2, 0, 0.1),
    channels: [channel('rpm', 'engineSpeed', [200, 210, 220, 500, 520])],
    segments: [
      { from: 0, to: 3 },
      { from: 3, to: 5 },
    ],
  };
  const values = (formula: string) =>
    [...unwrap(deriveChannel(twice, derived(formula), parser)).values].map((v) => Number(v.toFixed(6)));
  expect(values('smooth(engineSpeed, 1 s) * 1 s')).toEqual([210, 210, 210, 510, 510]);
  expect(values('rate(engineSpeed) * 1 s * 1 s')).toEqual([100, 100, 100, 200, 200]);
});

describe('what a formula may not do', () => {
  it.each([
    'import("fs")',
    'a = 3',
    'f(x) = x',
    'boost.constructor',
    'boost["constructor"]',
    'cos.constructor("return process")()',
    '[1, 2, 3]',
    '{a: 1}',
    '"text"',
    '1:1e9',
    'factorial(1e9)',
    'evaluate("1")',
    'parse("1")',
    'createUnit("x")',
    'constructor',
    '__proto__',
    'toString()',
    'boost; boost',
    'boost\nboost',
    'min()',
    'abs(1, 2)',
    '1i',
  ])('%s is refused', (formula) => {
    expect(codeOf(formula)).toMatch(/^log\/formula-(refused|unreadable|symbol-unknown)$/);
  });

  it('is bounded in size: depth and parts', () => {
    expect(codeOf(`${'('.repeat(60)}1${')'.repeat(60)}`)).toBe('log/formula-too-large');
    expect(codeOf(Array(150).fill('1').join('+'))).toBe('log/formula-too-large');
    expect(codeOf('  ')).toBe('log/formula-empty');
    expect(
      DerivedChannelSchema.safeParse({ name: 'x', formula: '1'.repeat(501), kind: 'number' }).success,
    ).toBe(false);
  });
});

describe('what is wrong with a formula is said in words of the trade', () => {
  const show = createShow('en', metricUnits);
  const said = (formula: string) => {
    const result = deriveChannel(log, derived(formula), parser);
    return result.ok ? null : problemText(result.problems[0], show);
  };

  it('names what is measured on both sides, and what the formula gives', () => {
    expect(said('boost + engineSpeed')?.message).toContain('at “+”: Pressure ≠ Engine speed.');
    expect(said('smooth(boost, 3)')?.message).toContain('at “smooth”: Plain number ≠ Time.');
    expect(said('boost * 2')?.message).toContain(
      'gives “Pressure”, but the channel is to be “Plain number”.',
    );
  });

  it('tells how to bring what no kind measures to one', () => {
    expect(said('rate(engineSpeed)')?.message).toContain('gives “s^-2”');
    expect(said('rate(engineSpeed)')?.remedy).toContain('* (1 s)');
  });

  it('says where it stops to be readable, in no other language than the reader’s', () => {
    expect(said('boost - 0,2 bar')?.message).toContain('can’t be read from character 10 on: “,2 bar”.');
    expect(said('boost +')?.message).toContain('ends where something is still to come.');
  });
});
