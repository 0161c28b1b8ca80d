import { describe, expect, it } from 'vitest';
import {
  interval,
  intervalOf,
  mixtureCdf,
  mixtureQuantile,
  type TMixture,
  tQuantile,
} from '../../../core/compare/statistics/index.ts';

const part = (weight: number, centre: number, scale: number, degrees: number) => ({
  weight,
  centre,
  scale,
  degrees,
});

describe('an interval read from several stories', () => {
  it('is that of Student’s t where there is one story', () => {
    const [low, high] = intervalOf([part(1, 0.02, 0.004, 7)]);
    const plain = interval({ difference: 0.02, standardError: 0.004, degrees: 7 });
    expect(low).toBeCloseTo(plain[0], 12);
    expect(high).toBeCloseTo(plain[1], 12);
  });

  it('has a quarter of it below the middle of the lower of two stories far apart', () => {
    const apart: TMixture = [part(0.5, -1, 0.01, 1e8), part(0.5, 1, 0.01, 1e8)];
    expect(mixtureQuantile(apart, 0.25)).toBeCloseTo(-1, 9);
    expect(mixtureCdf(apart, 0)).toBeCloseTo(0.5, 12);
  });

  it('holds what a story of one in five says, and lies inside the widest of all', () => {
    const stories: TMixture = [part(0.8, 0, 0.003, 12), part(0.2, 0.012, 0.005, 9)];
    const [low, high] = intervalOf(stories);
    expect(mixtureCdf(stories, low)).toBeCloseTo(0.025, 10);
    expect(mixtureCdf(stories, high)).toBeCloseTo(0.975, 10);
    expect(high).toBeGreaterThan(0.012);
    expect(high).toBeLessThan(0.012 + tQuantile(0.975, 9) * 0.005);
    expect(low).toBeGreaterThan(-tQuantile(0.975, 12) * 0.003);
  });

  it('stands on its point where nothing scatters', () => {
    expect(intervalOf([part(1, 0.01, 0, 3)])).toEqual([0.01, 0.01]);
  });
});
