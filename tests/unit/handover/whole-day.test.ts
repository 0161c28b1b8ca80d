import { describe, expect, it } from 'vitest';
import type { DifferenceCurve } from '../../../core/compare/index.ts';
import { wholeCurve } from '../../../core/handover/facts/whole-day.ts';
import type { Note } from '../../../core/result/index.ts';

const of = (...values: number[]) => Float64Array.from(values);
const curve: DifferenceCurve = {
  engineSpeed_rad_s: of(300, 310, 320, 330),
  before: of(100, 100, 100, 100),
  after: of(101, 104, 105, 97),
  beforeHalf: of(1, 1, 1, 1),
  afterHalf: of(1, 1, 1, 1),
  delta: of(1, 4, 5, -3),
  low: of(-1, 2, 3, -5),
  high: of(3, 6, 7, -1),
  proven: [],
};
const several: Note = { code: 'compare/more-than-one', facts: { quantities: ['boost', 'lambda'] } };
const weather: Note = { code: 'compare/weather-beyond', facts: { share: 0.04 } };

describe('the whole day on the curve', () => {
  it('is proven wherever its band leaves zero out, though several changes made it', () => {
    const found = wholeCurve({ kind: 'not-comparable', curve, reasons: [several] });
    expect(found.doubts).toEqual([]);
    expect(found.curve?.proven).toEqual([
      { from: 1, to: 3, sign: 1 },
      { from: 3, to: 4, sign: -1 },
    ]);
  });

  it('proves nothing where the two sides stood otherwise for another reason, and names it', () => {
    const found = wholeCurve({ kind: 'not-comparable', curve, reasons: [several, weather] });
    expect(found.doubts).toEqual([weather]);
    expect(found.curve?.proven).toEqual([]);
  });

  it('leaves the curve of a verdict that stands as it is', () => {
    const proven = [{ from: 1, to: 2, sign: 1 }] as const;
    const found = wholeCurve({ kind: 'gain', curve: { ...curve, proven }, reasons: [] });
    expect(found).toEqual({ curve: { ...curve, proven }, doubts: [] });
  });
});
