import { describe, expect, it } from 'vitest';
import { fitLevels } from '../../../core/compare/levels/level-fit.ts';
import { mixtureQuantile, type TMixture, tQuantile } from '../../../core/compare/statistics/index.ts';
import { checkValue } from '../../support/check-values.ts';

describe('levels by restricted maximum likelihood', () => {
  it('one setup and one nuisance without prior is a straight line (NIST StRD, Norris)', () => {
    const { x, y } = checkValue('nist-norris').inputs as { x: number[]; y: number[] };
    const expected = checkValue('nist-norris').expected as Record<string, number>;
    const tolerance = checkValue('nist-norris').tolerance as Record<string, number>;
    const fit = fitLevels({
      levels: Float64Array.from(y),
      setupOf: new Int32Array(y.length),
      setups: 1,
      nuisances: [{ values: Float64Array.from(x), priorMean: 0, priorDeviation: Infinity }],
      prior: null,
      varianceFloor: 0,
      order: null,
    });
    const within = (actual: number | undefined, key: string) =>
      expect(Math.abs((actual ?? Number.NaN) - (expected[key] as number)), key).toBeLessThanOrEqual(
        tolerance[key] as number,
      );
    within(fit?.coefficients[0], 'slope');
    within(Math.sqrt(fit?.covariance[0]?.[0] ?? Number.NaN), 'slope_sd');
    within(Math.sqrt(fit?.variance ?? Number.NaN), 'residual_sd');
    expect(fit?.degrees).toBe(34);
  });

  it.each(['nist-sirstv', 'nist-atmwtag'])('setups alone are an analysis of variance (%s)', (id) => {
    const groups = checkValue(id).inputs.groups as number[][];
    const fit = fitLevels({
      levels: Float64Array.from(groups.flat()),
      setupOf: Int32Array.from(groups.flatMap((g, i) => g.map(() => i))),
      setups: groups.length,
      nuisances: [],
      prior: null,
      varianceFloor: 0,
      order: null,
    });
    const { residual_sd } = checkValue(id).expected as { residual_sd: number };
    const tolerance = (checkValue(id).tolerance as { residual_sd: number }).residual_sd;
    expect(Math.abs(Math.sqrt(fit?.variance ?? Number.NaN) - residual_sd)).toBeLessThanOrEqual(tolerance);
    const contrast = fit?.combine(groups.map((_, i) => (i === 0 ? -1 : i === 1 ? 1 : 0)));
    const mean = (g: number[] = []) => g.reduce((a, b) => a + b, 0) / g.length;
    expect(contrast?.difference).toBeCloseTo(mean(groups[1]) - mean(groups[0]), 9);
    expect(contrast?.degrees).toBeCloseTo(groups.flat().length - groups.length, 6);
  });

  it.each([
    [2, 2],
    [2, 5],
    [5, 3],
  ])(
    'with %d setups of %d and no nuisance a contrast has the quantiles of Student’s t (tables of t)',
    (setups, pulls) => {
      const levels = Float64Array.from({ length: setups * pulls }, (_, i) => 0.004 * Math.sin(7 * i + 1));
      const fit = fitLevels({
        levels,
        setupOf: Int32Array.from(levels, (_, i) => Math.floor(i / pulls)),
        setups,
        nuisances: [],
        prior: null,
        varianceFloor: 0,
        order: null,
      });
      const sum = fit?.combine([-1, 1, ...new Array<number>(setups - 2).fill(0)]);
      const parts: TMixture = (sum?.byScatter ?? []).map((p) => ({
        ...p,
        degrees: Number.POSITIVE_INFINITY,
      }));
      const error = Math.sqrt(((fit?.variance ?? Number.NaN) * 2) / pulls);
      for (const p of [0.8, 0.9, 0.975]) {
        const t = (mixtureQuantile(parts, p) - (sum?.difference ?? Number.NaN)) / error;
        expect(Math.abs(t / tQuantile(p, setups * (pulls - 1)) - 1), String(p)).toBeLessThan(1e-3);
      }
    },
  );
});
