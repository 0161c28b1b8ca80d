import { describe, expect, it } from 'vitest';
import type { DerivedChannel } from '../../../core/log/index.ts';
import { isOther } from '../../../renderer/derived/check-derived.ts';

const ratio: DerivedChannel = {
  name: 'Pressure ratio',
  formula: 'manifoldPressure / ambientPressure',
  kind: 'number',
  quantity: null,
  inputs: [],
};
const blank: DerivedChannel = { ...ratio, name: ' ', formula: '' };

describe('channels by formula as a person entered them', () => {
  it('are no other while nothing but an empty row came to them', () => {
    expect(isOther([ratio], [ratio])).toBe(false);
    expect(isOther([ratio], [ratio, blank])).toBe(false);
    expect(isOther([ratio], [{ ...ratio, name: 'Pressure ratio ' }])).toBe(false);
  });

  it.each([
    ['a letter of the formula', [{ ...ratio, formula: `${ratio.formula} + 1` }]],
    ['a name', [{ ...ratio, name: 'Ratio' }]],
    ['what it is measured as', [{ ...ratio, kind: 'pressure' as const }]],
    ['what it stands for', [{ ...ratio, quantity: 'boost' as const }]],
    ['a row with nothing but a name', [ratio, { ...blank, name: 'New' }]],
    ['a row less', []],
  ])('are others with %s', (_what, now) => {
    expect(isOther([ratio], now)).toBe(true);
  });
});
