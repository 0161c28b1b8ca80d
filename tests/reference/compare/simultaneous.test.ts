import { describe, expect, it } from 'vitest';
import { simultaneousFactor } from '../../../core/compare/curve/simultaneous.ts';
import { fQuantile, tQuantile } from '../../../core/compare/statistics/index.ts';

describe('the band for a whole curve', () => {
  it('is a single point’s interval where the curve has no length', () => {
    for (const degrees of [2, 5, 12]) {
      expect(simultaneousFactor(0, degrees)).toBeCloseTo(tQuantile(0.975, degrees), 9);
    }
  });

  it.each([4, 10, 30])(
    'covers Scheffé’s band for a straight line without end, with %d degrees',
    (degrees) => {
      // Scheffé (1953), as in Working and Hotelling's band: sqrt(2 F(0.95; 2, degrees)) is exact for a straight line
      // over the whole axis, whose standardised path is half a turn. Ours counts its ends besides.
      const scheffe = Math.sqrt(2 * fQuantile(0.95, [2, degrees]));
      const ours = simultaneousFactor(Math.PI, degrees);
      expect(ours).toBeGreaterThan(scheffe);
      expect(ours).toBeLessThan(1.15 * scheffe);
    },
  );

  it('grows with the number of independent pieces and shrinks with what is known of the scatter', () => {
    expect(simultaneousFactor(6, 8)).toBeGreaterThan(simultaneousFactor(3, 8));
    expect(simultaneousFactor(6, 20)).toBeLessThan(simultaneousFactor(6, 8));
  });
});
