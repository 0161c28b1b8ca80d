import { expect, it } from 'vitest';
import { degrees, fromSi, tidy } from '../../../core/units/index.ts';

it.each([
  [39.99999999, 40],
  [0.123456789, 0.123457],
  [-1234567.8, -1234570],
  [0, 0],
])('%d leaves the program as %d', (value, told) => {
  expect(tidy(value)).toBe(told);
});

it.each([0, -30, 14, 360])('%d degrees are the angle that the table of units has', (value) => {
  expect(fromSi(degrees(value), 'deg')).toBeCloseTo(value, 12);
});
