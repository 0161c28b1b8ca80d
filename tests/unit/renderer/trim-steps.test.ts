import { describe, expect, it } from 'vitest';
import { movedEnd, nearestSample } from '../../../renderer/bench/trim-steps.ts';

const time = Float64Array.from([10, 10.04, 10.08, 10.2, 11]);

describe('an end of a pull', () => {
  it('goes to the next sample, also from between two and over a gap', () => {
    expect(movedEnd(time, 10.04, 1, false)).toBe(10.08);
    expect(movedEnd(time, 10.04, -1, false)).toBe(10);
    expect(movedEnd(time, 10.06, 1, false)).toBe(10.08);
    expect(movedEnd(time, 10.2, 1, false)).toBe(11);
  });

  it('moves on from a sample that the field rounded', () => {
    expect(movedEnd(time, 10.0797, 1, false)).toBe(10.2);
    expect(movedEnd(time, 10.0803, -1, false)).toBe(10.04);
  });

  it('goes by a tenth of a second, and never beyond the samples', () => {
    expect(movedEnd(time, 10.04, 1, true)).toBeCloseTo(10.14, 9);
    expect(movedEnd(time, 10.04, -1, true)).toBe(10);
    expect(movedEnd(time, 11, 1, false)).toBe(11);
  });

  it('reads the sample that is nearest, none of an empty log', () => {
    expect(nearestSample(time, 10.15)).toBe(3);
    expect(nearestSample(time, 99)).toBe(4);
    expect(nearestSample(new Float64Array(0), 1)).toBe(-1);
  });
});
