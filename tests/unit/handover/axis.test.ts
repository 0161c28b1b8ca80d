import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axisOver, roundTicks, spanOf } from '../../../core/handover/index.ts';

describe('the ticks of an axis', () => {
  it('are round and inside the range', () => {
    expect(roundTicks(48, 206, 7)).toEqual({ ticks: [50, 75, 100, 125, 150, 175, 200], digits: 0 });
    expect(roundTicks(0, 1.3, 7).ticks).toEqual([
      0, 0.2, 0.4, 0.6000000000000001, 0.8, 1, 1.2000000000000002,
    ]);
  });

  it('carry as many digits as their step needs', () => {
    expect(roundTicks(0, 0.1, 5).digits).toBe(3);
    expect(roundTicks(0, 1, 6).digits).toBe(1);
    expect(roundTicks(0, 8000, 6).digits).toBe(0);
  });

  it('are never more than asked for, and never none over a range wide enough', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        fc.integer({ min: 3, max: 12 }),
        (low, width, most) => {
          const { ticks } = roundTicks(low, low + width, most);
          expect(ticks.length).toBeLessThanOrEqual(most);
          expect(ticks.length).toBeGreaterThanOrEqual(1);
          for (const t of ticks) {
            expect(t).toBeGreaterThanOrEqual(low - 1e-6 * width - 1e-6);
            expect(t).toBeLessThanOrEqual(low + width + 1e-6 * width + 1e-6);
          }
        },
      ),
    );
  });
});

describe('an axis over values', () => {
  const text = (v: number, digits: number) => v.toFixed(digits);

  it('leaves room at both ends', () => {
    const axis = axisOver([100, 200], { title: 'Power, kW', most: 6, room: 0.05, text });
    expect(axis.range).toEqual([95, 205]);
    expect(axis.ticks.map((t) => t.text)).toEqual(['100', '120', '140', '160', '180', '200']);
  });

  it('holds the value that must be seen, and an empty plot still has an axis', () => {
    expect(axisOver([5, 12], { title: '', most: 4, room: 0, include: 0, text }).range[0]).toBe(0);
    expect(axisOver(null, { title: '', most: 4, room: 0, text }).ticks.length).toBeGreaterThan(1);
    expect(axisOver([3, 3], { title: '', most: 4, room: 0, text }).range).toEqual([2.5, 3.5]);
  });

  it('ignores gaps', () => {
    expect(spanOf([1, null, 4], [Number.NaN, -2])).toEqual([-2, 4]);
    expect(spanOf([null])).toBeNull();
  });
});
