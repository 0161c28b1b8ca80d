import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bends } from '../../../renderer/chart/bends.ts';

test('a straight line needs its ends alone', () => {
  expect(bends([0, 1, 2, 3], [0, 2, 4, 6], 0)).toEqual([0, 3]);
});

test('gaps stay, and each stretch keeps its ends', () => {
  expect(bends([0, 1, 2, 3, 4, 5, 6], [1, 1, 1, null, 2, 2, 2], 0.1)).toEqual([0, 2, 3, 4, 6]);
});

test('nothing in, nothing out', () => {
  expect(bends([], [], 1)).toEqual([]);
});

test('a step at one x is told', () => {
  expect(bends([0, 1, 1, 2], [0, 0, 5, 5], 0.5)).toEqual([0, 1, 2, 3]);
});

test('no sample lies further from the line through the kept ones than was allowed', () => {
  const values = fc.array(fc.double({ min: -1000, max: 1000, noNaN: true }), {
    minLength: 1,
    maxLength: 200,
  });
  fc.assert(
    fc.property(values, fc.double({ min: 0, max: 100, noNaN: true }), (y, within) => {
      const x = y.map((_, i) => i * 0.5);
      const kept = bends(x, y, within);
      expect(kept[0]).toBe(0);
      expect(kept.at(-1)).toBe(y.length - 1);
      for (let k = 1; k < kept.length; k++) {
        const [a, b] = [kept[k - 1] ?? 0, kept[k] ?? 0];
        for (let i = a; i <= b; i++) {
          const [from, to] = [y[a] ?? 0, y[b] ?? 0];
          const drawn = a === b ? from : from + ((to - from) * (i - a)) / (b - a);
          expect(Math.abs((y[i] ?? 0) - drawn)).toBeLessThanOrEqual(within + 1e-9);
        }
      }
    }),
  );
});

test.each([-1, Number.NEGATIVE_INFINITY, Number.NaN])('it also ends where %d was allowed', (within) => {
  expect(bends([0, 1, 2], [0, 5, 0], within)).toEqual(within < 0 ? [0, 1, 2] : [0, 2]);
  expect(bends([0, 1, 2], [0, 1, 2], within)).toEqual([0, 2]);
});
