import { expect, it } from 'vitest';
import { halfAround } from '../../../core/words/index.ts';

it.each([
  ['in the middle', 10, [8, 12], 2],
  ['nearer the low end', 14.4, [11.6, 18.2], 3.8],
  ['nearer the high end', -5, [-9, -4], 4],
] as const)('of a value %s reaches to the farther end', (_, value, interval, half) => {
  expect(halfAround(value, interval)).toBeCloseTo(half, 9);
});
