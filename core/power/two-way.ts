import { fail, type Note, ok, type Result } from '../result/index.ts';
import type { Car } from './car/car.ts';
import { type FormulaCard, input } from './explain.ts';
import { practice, standardGravity } from './practice.ts';
import type { PullPower } from './pull-power.ts';

export type TwoWay = {
  /** Rise per distance in the direction called out, as if slope alone made the difference. */
  readonly grade: number;
  /** Standard error of the grade. */
  readonly error: number;
  /** Wind against the direction called out, as if wind alone made the difference [m/s]. */
  readonly headwind: number;
  /** Out minus back, over their mean, mean over the band: uphill or against the wind out is negative. */
  readonly difference: number;
  /** True where level lies outside the grade's 95 % interval. */
  readonly isClear: boolean;
  /** Mean of both directions, each direction counting once: slope and steady wind cancel. */
  readonly engineSpeed_rad_s: Float64Array;
  /** [W] */
  readonly wheelPower: Float64Array;
  readonly notes: readonly Note[];
};

/**
 * What pulls in both directions of one stretch say of its slope and wind. The powers must have been worked out for
 * a level road.
 *
 *   P_out = P - m g s v,  P_back = P + m g s v   ->  s = (P_back - P_out) / (2 m g v)
 *   with wind instead: w = (P_back - P_out) / (2 rho CdA v^2)
 *
 * @param out, back  pulls of one gear and one tune, direction by direction
 * @param distance   road per radian of the crank [m], slip included
 * @returns          grade and headwind are two readings of one difference, not both at once
 *
 * The error comes from the scatter between pulls where a direction was driven twice or more, else from the noise
 * of the pulls themselves, which is less than what repeats truly differ by.
 * Valid:  slopes of a few percent, wind well below the car's speed.
 * Errors: power/no-two-way without a pull either way, power/no-common-band.
 * Source: force balance.
 * Check:  1 % on 1300 kg at 120 km/h is 4.25 kW each way.
 */
export function twoWayDisagreement(
  pulls: { readonly out: readonly PullPower[]; readonly back: readonly PullPower[] },
  car: Car,
  distance: number,
): Result<TwoWay> {
  const { out, back } = pulls;
  if (out.length === 0 || back.length === 0)
    return fail({ code: 'power/no-two-way', facts: { out: out.length, back: back.length } });
  const grid = commonGrid([...out, ...back]);
  if (grid.length < 3) return fail({ code: 'power/no-common-band', facts: {} });
  const outCurves = out.map((p) => at(grid, p, p.wheelPower));
  const backCurves = back.map((p) => at(grid, p, p.wheelPower));
  const weight = car.mass_kg * standardGravity;
  const drag = practice.airDensity * (car.dragArea_m2 ?? practice.dragArea);
  const speed = grid.map((w) => w * distance);
  // Each pull as the grade it would mean alone, against the mean of the other direction.
  const slopeOf = (curve: Float64Array, other: Float64Array) =>
    mean(curve.map((p, i) => ((other[i] as number) - p) / (2 * weight * (speed[i] as number))));
  const outMean = meanCurve(outCurves);
  const backMean = meanCurve(backCurves);
  const grade = slopeOf(outMean, backMean);
  const headwind = mean(
    outMean.map((p, i) => ((backMean[i] as number) - p) / (2 * drag * (speed[i] as number) ** 2)),
  );
  const wheelPower = outMean.map((p, i) => (p + (backMean[i] as number)) / 2);
  const difference = mean(outMean.map((p, i) => (p - (backMean[i] as number)) / (wheelPower[i] as number)));
  const scatter = [
    scatterOf(outCurves.map((c) => slopeOf(c, backMean))),
    scatterOf(backCurves.map((c) => slopeOf(outMean, c))),
  ];
  const own = [out, back].flat().map((p) => {
    const noise = at(grid, p, p.wheelPowerError);
    return mean(noise.map((e, i) => e / (2 * weight * (speed[i] as number))));
  });
  const squares = scatter.reduce((sum, s) => sum + s.squares, 0);
  const freedom = scatter.reduce((sum, s) => sum + s.freedom, 0);
  const perPull = freedom > 0 ? Math.sqrt(squares / freedom) : Math.hypot(...own) / Math.sqrt(own.length);
  const error = perPull * Math.sqrt(1 / out.length + 1 / back.length);
  const half = (studentAt95[freedom] ?? 2.1) * error;
  const isClear = Math.abs(grade) > half;
  return ok({
    grade,
    error,
    headwind,
    difference,
    isClear,
    engineSpeed_rad_s: grid,
    wheelPower,
    notes: isClear ? [{ code: 'power/two-way-slope', facts: { grade, half } }] : [],
  });
}

/**
 * Student's t at 97.5 % over degrees of freedom; none means that the pulls' own noise is all there is, which is too
 * little by half or so. NIST/SEMATECH e-Handbook, table 1.3.6.7.2.
 */
const studentAt95 = [4, 12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228];

/** Points of the first pull that all pulls reach. */
function commonGrid(pulls: readonly PullPower[]): Float64Array {
  const from = Math.max(...pulls.map((p) => p.engineSpeed_rad_s[0] as number));
  const to = Math.min(...pulls.map((p) => p.engineSpeed_rad_s.at(-1) as number));
  const first = pulls[0] as PullPower;
  return first.engineSpeed_rad_s.filter((w) => w >= from - 1e-9 && w <= to + 1e-9);
}

function at(grid: Float64Array, pull: PullPower, values: Float64Array): Float64Array {
  const xs = pull.engineSpeed_rad_s;
  let i = 0;
  return grid.map((w) => {
    while (i < xs.length - 2 && (xs[i + 1] as number) < w) i++;
    const x0 = xs[i] as number;
    const x1 = (xs[i + 1] ?? x0) as number;
    const share = x1 > x0 ? Math.min(1, Math.max(0, (w - x0) / (x1 - x0))) : 0;
    return (values[i] as number) * (1 - share) + ((values[i + 1] ?? values[i]) as number) * share;
  });
}

function meanCurve(curves: readonly Float64Array[]): Float64Array {
  const first = curves[0] as Float64Array;
  return first.map((_, i) => curves.reduce((sum, c) => sum + (c[i] as number), 0) / curves.length);
}

function mean(values: Float64Array): number {
  return values.reduce((a, b) => a + b, 0) / values.length;
}

function scatterOf(values: readonly number[]): { squares: number; freedom: number } {
  const centre = values.reduce((a, b) => a + b, 0) / values.length;
  return { squares: values.reduce((sum, v) => sum + (v - centre) ** 2, 0), freedom: values.length - 1 };
}

export const explainTwoWay: FormulaCard = {
  formula: 's = (P_back - P_out) / (2 m g v);  or as wind  w = (P_back - P_out) / (2 rho CdA v^2)',
  inputs: [
    input('P_out, P_back', 'W', 'wheel power each way, worked out as level'),
    input('m', 'kg', 'mass as driven'),
    input('v', 'm/s', 'road speed'),
    input('rho CdA', 'kg/m', 'air density times drag area'),
  ],
  source: 'force balance',
  validRange: 'one stretch, one gear, one tune; wind steady over both ways',
};
