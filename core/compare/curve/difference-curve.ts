import type { Grid } from '../band/grid.ts';
import { tQuantile } from '../statistics/index.ts';
import type { DifferenceCurve } from '../verdict.ts';
import { meanCurve, type ScatterAlong } from './scatter-along.ts';
import { simultaneousFactor } from './simultaneous.ts';

/**
 * After minus before along engine speed with its simultaneous band.
 *
 * @param before,after  wheel power of each pull on the grid [W]
 * @param scatter       null where nobody can tell the repeatability: then the band is NaN and nothing is proven
 * @param nuisance      what holding nuisances equal does to the level of `after`: a share, and its variance
 */
export function differenceCurve(
  grid: Grid,
  sides: { readonly before: readonly Float64Array[]; readonly after: readonly Float64Array[] },
  scatter: ScatterAlong | null,
  nuisance: { readonly correction: number; readonly variance: number },
): DifferenceCurve {
  const before = meanCurve(sides.before);
  const after = meanCurve(sides.after).map((v) => v * Math.exp(nuisance.correction));
  const delta = after.map((v, k) => v - (before[k] as number));
  const nothing = () => new Float64Array(delta.length).fill(Number.NaN);
  const beforeHalf = nothing();
  const afterHalf = nothing();
  const low = nothing();
  const high = nothing();
  if (scatter) {
    const single = tQuantile(0.975, scatter.degrees);
    const whole = simultaneousFactor(scatter.pathLength, scatter.degrees);
    for (let k = 0; k < delta.length; k++) {
      const one = scatter.deviation[k] as number;
      const b = (one * (before[k] as number)) / Math.sqrt(sides.before.length);
      const a = (one * (after[k] as number)) / Math.sqrt(sides.after.length);
      const common = nuisance.variance * (after[k] as number) ** 2;
      const half = whole * Math.sqrt(a * a + b * b + common);
      beforeHalf[k] = single * b;
      afterHalf[k] = single * a;
      low[k] = (delta[k] as number) - half;
      high[k] = (delta[k] as number) + half;
    }
  }
  return {
    engineSpeed_rad_s: grid.engineSpeed_rad_s,
    before,
    after,
    beforeHalf,
    afterHalf,
    delta,
    low,
    high,
    proven: provenRanges(low, high),
  };
}

/** Where along the grid a simultaneous band lies on one side of zero; from a point, up to before another. */
export function provenRanges(low: Float64Array, high: Float64Array): DifferenceCurve['proven'] {
  const found: { from: number; to: number; sign: 1 | -1 }[] = [];
  for (let k = 0; k < low.length; k++) {
    const sign = (low[k] as number) > 0 ? 1 : (high[k] as number) < 0 ? -1 : 0;
    if (sign === 0) continue;
    const last = found[found.length - 1];
    if (last && last.to === k && last.sign === sign) last.to = k + 1;
    else found.push({ from: k, to: k + 1, sign });
  }
  return found;
}
