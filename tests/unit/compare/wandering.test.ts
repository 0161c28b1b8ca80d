import { describe, expect, it } from 'vitest';
import { wanderOf } from '../../../core/compare/levels/wandering.ts';

/** Two sides of n pulls, the second `gap` places after the first. */
const sides = (n: number, gap = 0) => ({
  order: Float64Array.from({ length: 2 * n }, (_, i) => (i < n ? i : i + gap)),
  weights: Array.from({ length: 2 * n }, (_, i) => (i < n ? -1 / n : 1 / n)),
});

describe('a day that wanders', () => {
  it.each([1, 2, 3, 5])('moves %d pulls against the next as many by the formula', (n) => {
    const { order, weights } = sides(n);
    expect(wanderOf(order, weights)).toBeCloseTo((2 * n * n + 1) / (3 * n), 12);
  });

  it('moves sides further apart further, by one step for each place between', () => {
    const near = sides(3);
    const far = sides(3, 4);
    expect(wanderOf(far.order, far.weights)).toBeCloseTo(wanderOf(near.order, near.weights) + 4, 12);
  });

  it('does not ask in which sequence the pulls are given', () => {
    const { order, weights } = sides(3);
    expect(wanderOf(order.toReversed(), weights.toReversed())).toBeCloseTo(wanderOf(order, weights), 12);
  });

  it('is told best by driving side by side: out of order it wanders least', () => {
    const order = Float64Array.from([0, 3, 4, 1, 2, 5]);
    const weights = [-1, -1, -1, 1, 1, 1].map((w) => w / 3);
    const blocks = sides(3);
    expect(wanderOf(order, weights)).toBeLessThan(wanderOf(blocks.order, blocks.weights) / 3);
  });
});
