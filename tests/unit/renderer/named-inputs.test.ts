import { describe, expect, it } from 'vitest';
import {
  type Channel,
  DerivedChannelSchema,
  deriveChannel,
  type Log,
  loadFormulaParser,
  type QuantityId,
} from '../../../core/log/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { checkDerived } from '../../../renderer/derived/check-derived.ts';
import { followed, inputsOf, namedColumns } from '../../../renderer/derived/named-inputs.ts';

const parser = await loadFormulaParser();
const channel = (column: string, quantity: QuantityId | null, values: number[], confidence = 1): Channel => ({
  column,
  quantity,
  unit: '',
  confidence,
  reason: null,
  values: Float64Array.from(values),
  flags: new Uint8Array(values.length),
});
const log: Log = {
  file: 'a.csv',
  time: Float64Array.of(0, 1),
  channels: [
    channel('Boost', 'boost', [50e3, 100e3]),
    channel('Größe über alles', null, [7, 8]),
    channel('Lambda 1', 'lambda', [0.8, 0.9]),
    channel('Lambda 2', 'lambda', [0.82, 0.94], 0.9),
  ],
  segments: [{ from: 0, to: 2 }],
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
const made = (formula: string, name = 'n') => DerivedChannelSchema.parse({ name, formula, kind: 'number' });

describe('columns that a formula names by a short name', () => {
  it('are the unknown ones and further ones of a quantity, and their values are reckoned with', () => {
    const named = namedColumns(log, []);
    expect(named.map((n) => n.symbol)).toEqual(['Groesse_ueber_alles', 'Lambda_2']);
    const formula = 'Groesse_ueber_alles * 2 + (Lambda_2 - lambda)';
    const inputs = inputsOf(formula, [], named);
    expect(inputs.map((i) => i.column)).toEqual(['Größe über alles', 'Lambda 2']);
    const { values } = unwrap(deriveChannel(log, { ...made(formula), inputs }, parser));
    expect([...values].map((v) => Number(v.toFixed(6)))).toEqual([14.02, 16.04]);
  });

  it('are given up with their name, and one that a person named otherwise stays', () => {
    const own = [{ symbol: 'mine', column: 'Größe über alles', kind: 'number' as const }];
    expect(inputsOf('mine + 1', own, namedColumns(log, []))).toEqual(own);
    expect(inputsOf('1 + 1', own, namedColumns(log, []))).toEqual([]);
  });

  it('can be channels by formula above, which are followed when they are called or measured otherwise', () => {
    const first = DerivedChannelSchema.parse({
      name: 'Rest of boost',
      formula: 'boost - 20 kPa',
      kind: 'pressure',
    });
    const formula = 'Rest_of_boost / (1 kPa)';
    const second = { ...made(formula, 'b'), inputs: inputsOf(formula, [], namedColumns(log, [first])) };
    expect(checkDerived(log, [first, second], parser)[1]).toEqual({ kind: 'works', low: 30, high: 80 });
    const other = { ...first, name: 'Rest' };
    expect(checkDerived(log, [other, followed(second, first, other)], parser)[1]).toMatchObject({
      kind: 'works',
    });
  });
});
