/** One reading: y = sum a_k x_k, with the standard uncertainty of y. One or two columns. */
export type Reading = { readonly x: readonly number[]; readonly y: number; readonly error: number };

export type WeightedFit = {
  readonly coefficients: readonly number[];
  /** Standard error of the fitted line at `x`. */
  readonly errorAt: (x: readonly number[]) => number;
};

/**
 * Weighted least squares through one or two columns, by the normal equations: well conditioned at this size.
 *
 * @returns  null where the readings can't tell the columns apart
 * Source: JCGM 100:2008, H.3, for the errors.
 */
export function weightedFit(readings: readonly Reading[]): WeightedFit | null {
  const columns = readings[0]?.x.length ?? 0;
  let [s00, s01, s11, t0, t1] = [0, 0, 0, 0, 0];
  for (const { x, y, error } of readings) {
    const w = 1 / error ** 2;
    const [x0 = 0, x1 = 0] = x;
    s00 += w * x0 * x0;
    s01 += w * x0 * x1;
    s11 += w * x1 * x1;
    t0 += w * x0 * y;
    t1 += w * x1 * y;
  }
  if (columns === 1)
    return s00 > 0 ? { coefficients: [t0 / s00], errorAt: ([x = 0]) => Math.abs(x) / Math.sqrt(s00) } : null;
  const determinant = s00 * s11 - s01 * s01;
  if (!(determinant > 1e-12 * s00 * s11)) return null;
  return {
    coefficients: [(t0 * s11 - t1 * s01) / determinant, (t1 * s00 - t0 * s01) / determinant],
    errorAt: ([x0 = 0, x1 = 0]) =>
      Math.sqrt(Math.max(0, (s11 * x0 * x0 - 2 * s01 * x0 * x1 + s00 * x1 * x1) / determinant)),
  };
}
