import type { TemperatureCurve } from '../../../../core/fluids/temperature-curve.ts';
import { leastSquares } from './least-squares.ts';

/** A point of a reference equation: temperature [K], value in SI. */
export type Point = readonly [number, number];

/** Linear columns and right side of each form that is fitted; relative weight, so that ends count alike. */
const linear: {
  readonly [F in 'polynomial' | 'watson' | 'log-inverse']: (
    point: Point,
    of: { readonly count: number; readonly criticalTemperature: number },
  ) => { row: number[]; y: number };
} = {
  polynomial: ([t, v], { count }) => ({
    row: Array.from({ length: count }, (_, k) => (t - 293.15) ** k / v),
    y: 1,
  }),
  watson: ([t, v], { criticalTemperature }) => {
    const reduced = t / criticalTemperature;
    const log = Math.log(1 - reduced);
    return { row: [1, log, log * reduced, log * reduced * reduced], y: Math.log(v) };
  },
  'log-inverse': ([t, v]) => ({ row: [1, 1 / t, Math.log(t), 1 / (t * t)], y: Math.log(v) }),
};

/** A curve of the same form and length as `like`, through these points by least squares. */
export function fitCurve(like: TemperatureCurve, points: readonly Point[]): TemperatureCurve {
  const { form, criticalTemperature } = like;
  if (form !== 'polynomial' && form !== 'watson' && form !== 'log-inverse')
    throw new Error(`${form} is published as it stands`);
  const of = { count: like.coefficients.length, criticalTemperature };
  const rows = points.map((p) => linear[form](p, of));
  const found = leastSquares(
    rows.map((r) => r.row),
    rows.map((r) => r.y),
  );
  return {
    ...like,
    coefficients: form === 'watson' ? [Math.exp(found[0] ?? 0), ...found.slice(1)] : found,
  };
}
