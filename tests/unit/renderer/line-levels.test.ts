import { describe, expect, it } from 'vitest';
import { lineLevels, partIn } from '../../../renderer/chart/line-levels.ts';
import { panned, windowByKey, zoomed } from '../../../renderer/chart/plot-window.ts';

const count = 100_000;
const x = Float64Array.from({ length: count }, (_, i) => i / 1000);
const y = Float64Array.from({ length: count }, (_, i) => Math.sin(i / 700) + 0.3 * Math.sin(i * 1.7));
y[61_803] = 9;
y[20_001] = -9;
const levels = lineLevels(x, y);
const shown = (window: [number, number], most: number) => {
  const part = partIn(levels, window, most);
  if (!part) return [];
  return Array.from({ length: part.to - part.from }, (_, i) => part.from + i)
    .map((i) => [part.x[i] ?? Number.NaN, part.y[i] ?? Number.NaN] as const)
    .filter(([at]) => at >= window[0] && at <= window[1]);
};

describe('a thinned line', () => {
  it('keeps a spike of one sample at every level, in the order of the samples', () => {
    expect(levels.length).toBeGreaterThan(7);
    for (const level of levels) {
      expect([Math.min(...level.y), Math.max(...level.y)]).toEqual([-9, 9]);
      expect(level.x.every((v, i) => i === 0 || v >= (level.x[i - 1] ?? 0))).toBe(true);
    }
  });

  it.each<[[number, number], number]>([
    [[0, 100], 2400],
    [[61, 62], 2400],
    [[60, 80], 500],
    [[0.5, 99], 1000],
    [[33.3, 33.31], 600],
  ])('shows in %o no more than asked and the extremes of all samples there', (window, most) => {
    const part = partIn(levels, window, most);
    expect((part?.to ?? 0) - (part?.from ?? 0)).toBeLessThanOrEqual(most + 16);
    const there = shown(window, most).map(([, v]) => v);
    const all = [...y].filter((_, i) => (x[i] ?? 0) >= window[0] && (x[i] ?? 0) <= window[1]);
    expect(Math.max(...there)).toBe(Math.max(...all));
    expect(Math.min(...there)).toBe(Math.min(...all));
  });

  it('is whole where the window is narrow enough', () => {
    expect(shown([33.3, 33.31], 600)).toHaveLength(11);
  });

  it('runs on past both edges of a window between two samples, and is not there beside its ends', () => {
    const part = partIn(levels, [50.0002, 50.0004], 600);
    expect(part?.x.subarray(part.from, part.to)).toContain(50);
    expect(part?.x.subarray(part.from, part.to)).toContain(50.001);
    expect(partIn(levels, [200, 300], 600)).toBeNull();
  });

  it('keeps a wide gap and follows an axis that runs back', () => {
    const holed = y.slice();
    holed.fill(Number.NaN, 40_000, 60_000);
    const coarse = partIn(lineLevels(x, holed), [0, 100], 600);
    expect(coarse?.y.filter((v) => Number.isNaN(v)).length).toBeGreaterThan(50);
    const back = lineLevels([0, 1, 2, 1, 0, 1, 3], [0, 1, 2, 3, 4, 5, 6]);
    const part = partIn(back, [1.9, 2.1], 100);
    expect([...(part?.y.subarray(part.from, part.to) ?? [])]).toEqual([0, 1, 2, 3, 4, 5, 6]);
  });
});

describe('the window of a plot', () => {
  it('zooms about a place that stays where it is, and no wider than all', () => {
    expect(zoomed([0, 100], [0, 100], 0.5, 25)).toEqual([12.5, 62.5]);
    expect(zoomed([10, 60], [0, 100], 2, 30)).toBeNull();
    const [low, high] = zoomed([50, 50.06], [0, 100], 0.01, 50) ?? [0, 0];
    expect(high - low).toBeCloseTo(0.05, 9);
  });

  it('moves by a share of itself and stops at the ends with its width kept', () => {
    expect(panned([10, 30], [0, 100], 0.5)).toEqual([20, 40]);
    expect(panned([10, 30], [0, 100], -5)).toEqual([0, 20]);
    expect(panned([70, 90], [0, 100], 5)).toEqual([80, 100]);
  });

  it('takes its own keys and leaves the arrows alone to the reading line', () => {
    const key = (name: string, shiftKey = false) =>
      windowByKey({ key: name, shiftKey }, [0, 100], [0, 100], 20);
    expect(key('+')).toEqual([10, 60]);
    expect(key('0')).toBeNull();
    expect(key('ArrowLeft')).toBeUndefined();
    expect(key('x')).toBeUndefined();
    expect(windowByKey({ key: 'ArrowLeft', shiftKey: true }, [50, 60], [0, 100], null)).toEqual([49, 59]);
  });
});
