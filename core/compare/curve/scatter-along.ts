/** How pulls of one setup scatter about its mean curve, along engine speed, as a share of power. */
export type ScatterAlong = {
  /** Deviation of one pull at each point. */
  readonly deviation: Float64Array;
  /** Of the deviation as averaged along the band. */
  readonly degrees: number;
  /**
   * Length of the path that the residuals, taken as a unit vector, draw along the band [rad]: how many
   * independent pieces the curve has. 0 where all pulls differ by a factor alone.
   */
  readonly pathLength: number;
};

/** Share of the band over which deviations are averaged: a deviation from few pulls is rough by itself. */
const smoothing = 0.25;

/**
 * Scatter of curves about their group's mean, pooled over groups.
 *
 * @param groups  per setup its pulls' curves on one grid; setups of one pull add nothing
 *
 * Null without a setup of two pulls.
 *
 * Source: path length as estimate of the first Lipschitz-Killing curvature: Telschow and Schwartzman,
 *         J. Statist. Plann. Inference 216 (2022) 70, section 4.
 */
export function scatterAlong(groups: readonly (readonly Float64Array[])[]): ScatterAlong | null {
  const residuals: Float64Array[] = [];
  let degrees = 0;
  for (const curves of groups) {
    if (curves.length < 2) continue;
    degrees += curves.length - 1;
    const centre = meanCurve(curves);
    // Residuals of n pulls lie in n - 1 dimensions; Helmert's contrasts give just these, independent ones.
    for (let i = 1; i < curves.length; i++) {
      const scale = Math.sqrt(i / (i + 1));
      const before = meanCurve(curves.slice(0, i));
      const curve = curves[i] as Float64Array;
      residuals.push(centre.map((c, k) => (scale * ((curve[k] as number) - (before[k] as number))) / c));
    }
  }
  const length = residuals[0]?.length ?? 0;
  if (degrees === 0 || length === 0) return null;
  const squares = new Float64Array(length);
  for (const r of residuals) {
    for (let k = 0; k < length; k++) squares[k] = (squares[k] as number) + (r[k] as number) ** 2;
  }
  const norm = squares.map((s) => Math.sqrt(s) || 1);
  let pathLength = 0;
  for (let k = 1; k < length; k++) {
    let step = 0;
    for (const r of residuals) {
      step += ((r[k] as number) / (norm[k] as number) - (r[k - 1] as number) / (norm[k - 1] as number)) ** 2;
    }
    pathLength += Math.sqrt(step);
  }
  const reach = Math.round((length * smoothing) / 2);
  return {
    deviation: smoothed(
      squares.map((s) => s / degrees),
      reach,
    ).map(Math.sqrt),
    degrees: degrees * independence(residuals, norm, reach),
    pathLength,
  };
}

/**
 * How many times the degrees of one point's deviation its average over a window has: one over the mean squared
 * correlation in the window (Satterthwaite), with the squares of correlations from few pulls freed of their bias.
 */
function independence(residuals: readonly Float64Array[], norm: Float64Array, reach: number): number {
  const degrees = residuals.length;
  if (degrees < 3) return 1;
  let sum = 0;
  let count = 0;
  for (let k = 0; k < norm.length; k += Math.max(1, reach >> 2)) {
    for (let l = k - 2 * reach; l <= k + 2 * reach; l += Math.max(1, reach >> 2)) {
      if (l < 0 || l >= norm.length) continue;
      let r = 0;
      for (const one of residuals) {
        r += ((one[k] as number) / (norm[k] as number)) * ((one[l] as number) / (norm[l] as number));
      }
      // Two points of one window stand at most its width apart, near ones more often than far ones.
      const weight = 1 - Math.abs(k - l) / (2 * reach + 1);
      sum += weight * Math.max(0, (degrees * r * r - 1) / (degrees - 1));
      count += weight;
    }
  }
  return Math.max(1, Math.min(4, count / Math.max(sum, 1e-9)));
}

export function meanCurve(curves: readonly Float64Array[]): Float64Array {
  const out = new Float64Array(curves[0]?.length ?? 0);
  for (const curve of curves)
    for (let k = 0; k < out.length; k++) out[k] = (out[k] as number) + (curve[k] as number);
  return out.map((v) => v / curves.length);
}

/** Running mean, the window cut at the ends. */
function smoothed(values: Float64Array, reach: number): Float64Array {
  const sums = new Float64Array(values.length + 1);
  values.forEach((v, k) => {
    sums[k + 1] = (sums[k] as number) + v;
  });
  return values.map((_, k) => {
    const from = Math.max(0, k - reach);
    const to = Math.min(values.length, k + reach + 1);
    return ((sums[to] as number) - (sums[from] as number)) / (to - from);
  });
}
