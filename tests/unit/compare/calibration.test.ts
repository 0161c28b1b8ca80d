import { describe, expect, it } from 'vitest';
import { calibrateRow, cleanSteps, confounders, days, refusedShare } from '../../support/calibration.ts';

const mixed = days['mixed days'] ?? (() => ({}));

/**
 * A small turn of tests/bench/calibrate-verdict, so that a broken interval shows at once. Bounds are the wanted
 * ones with four standard errors of so few sessions.
 */
describe('the verdict keeps its word on invented sessions', () => {
  it.each([
    [2, 3],
    [5, 3],
  ])(
    '%d entries of %d pulls: intervals hold the truth and no change is rarely called one',
    (entries, pulls) => {
      const result = calibrateRow({ name: 'mixed', entries, pulls, day: mixed }, 120, 4711 + entries);
      expect(result.coverage).toBeGreaterThan(0.95 - 4 * Math.sqrt((0.95 * 0.05) / 120));
      expect(result.falseVerdicts).toBeLessThan(0.05 + 4 * Math.sqrt((0.05 * 0.95) / 60));
      expect(result.signErrors).toBeLessThan(0.05);
      expect(result.curveCoverage).toBeGreaterThan(0.87);
    },
  );

  it('a session of five entries is judged more sharply than by Welch’s t on two of them', () => {
    const result = calibrateRow({ name: 'mixed', entries: 5, pulls: 3, day: mixed }, 120, 99);
    expect(result.half).toBeLessThan(0.85 * result.welchHalf);
  });

  it.each(confounders)('refused: $name', (step) => {
    expect(refusedShare(step, { entries: 2, pulls: 3, day: mixed }, 25, 5)).toBeGreaterThan(0.8);
  });

  it.each(cleanSteps)('not refused: $name', (step) => {
    expect(refusedShare(step, { entries: 2, pulls: 3, day: mixed }, 25, 5)).toBeLessThan(0.15);
  });
});
