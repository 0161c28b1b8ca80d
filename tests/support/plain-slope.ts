import type { Samples } from '../../core/power/smoothing/local-polynomial.ts';

/*
 * The plain twin of core/power/smoothing/slope-estimate.ts: B-splines by their recursion, whole matrices, inverses by
 * elimination. Slow, and the measure of the fast one.
 */

type Matrix = number[][];

/** Value and slope of a noisy signal at an instant, with their errors and how strongly they go together. */
type SlopePoint = {
  readonly value: number;
  readonly slope: number;
  readonly valueVariance: number;
  readonly slopeVariance: number;
  readonly covariance: number;
};

/**
 * Smoothing spline whose third differences have variances that MacKay's rule reads from them: five rounds with one
 * for all, then five with a variance for each place from its neighbours within 0.7 s. Errors are those of variances
 * 1.2 standard deviations larger.
 */
export function plainSlope({ time, value, weight }: Samples): (time: number) => SlopePoint {
  const first = time[0] as number;
  const last = time.at(-1) as number;
  const span = last - first;
  const count = Math.max(4, Math.min(200, Math.round(span / 0.09)));
  const h = span / count;
  const size = count + 3;
  const rise = ((value.at(-1) as number) - (value[0] as number)) / span;
  const line = (t: number) => (value[0] as number) + rise * (t - first);

  const knots = Array.from({ length: size + 4 }, (_, i) => first + (i - 3) * h);
  // The end cells go on past the samples, so the cell is chosen first.
  const row = (t: number, degree = 3) => {
    const cell = Math.max(0, Math.min(count - 1, Math.floor((t - first) / h)));
    let level = Array.from({ length: size + 3 }, (_, i) => Number(i === cell + 3));
    for (let d = 1; d <= degree; d++)
      level = level.slice(0, size + 3 - d).map((own, i) => {
        const from = knots[i] as number;
        const to = knots[i + d + 1] as number;
        return (own * (t - from) + (level[i + 1] as number) * (to - t)) / (d * h);
      });
    return level;
  };
  const values = (t: number) => row(t).slice(0, size);
  const slopes = (t: number) => {
    const lower = row(t, 2);
    return Array.from({ length: size }, (_, i) => ((lower[i] as number) - (lower[i + 1] as number)) / h);
  };

  const basis = Array.from(time, values);
  const information = zeros(size);
  const right = new Array<number>(size).fill(0);
  basis.forEach((b, n) => {
    for (let i = 0; i < size; i++) {
      const w = (weight[n] as number) * (b[i] as number);
      if (w === 0) continue;
      right[i] = (right[i] as number) + w * ((value[n] as number) - line(time[n] as number));
      for (let j = 0; j < size; j++) add(information, i, j, w * (b[j] as number));
    }
  });
  const mean = Math.max((Math.max(...value) - Math.min(...value)) / span, 1e-9);
  const change = 0.08 * mean ** 2 * h ** 3;
  const trace = information.reduce((s, r, i) => s + (r[i] as number), 0);
  const least = (1e-9 * size) / trace;
  let variances = new Array<number>(count).fill(1e4 * least);
  const third = [-1, 3, -3, 1];

  const solve = () => {
    const all = information.map((r) => [...r]);
    const penalise = (at: number, pattern: number[], variance: number) => {
      pattern.forEach((p, a) => {
        pattern.forEach((q, b) => {
          add(all, at + a, at + b, (p * q) / variance);
        });
      });
    };
    variances.forEach((q, j) => {
      penalise(j, third, q);
    });
    for (let j = 0; j + 2 < size; j++) penalise(j, [1, -2, 1], change);
    const covariance = inverse(all);
    return { covariance, coefficients: covariance.map((r) => dot(r, right)) };
  };

  let bendsDecided = 0;
  for (let round = 0; round < 10; round++) {
    const { covariance, coefficients } = solve();
    const squares = variances.map((_, j) => dot(third, coefficients.slice(j, j + 4)) ** 2);
    const decided = variances.map((q, j) => {
      const spread = third.map((_, a) => dot(third, covariance[j + a]?.slice(j, j + 4) as number[]));
      return Math.max(1e-4, 1 - dot(third, spread) / q);
    });
    const total = (xs: number[]) => xs.reduce((a, b) => a + b, 0);
    bendsDecided = total(decided);
    if (round < 5) {
      variances.fill(Math.max(least, total(squares) / total(decided)));
      continue;
    }
    const usual = Math.exp(total(variances.map(Math.log)) / count);
    const far = Math.max(1, Math.round(0.7 / h));
    const near = (j: number, k: number) => Math.max(0, 1 - ((k - j) / (far + 1)) ** 2) ** 2;
    variances = variances.map((_, j) => {
      const above = 0.5 * usual + total(squares.map((s, k) => near(j, k) * s));
      return Math.max(least, above / (0.5 + total(decided.map((d, k) => near(j, k) * d))));
    });
  }

  const { coefficients } = solve();
  variances = variances.map((q) => q * Math.exp(1.2 * Math.sqrt(2 / Math.max(0.1, bendsDecided))));
  const { covariance } = solve();
  const between = (a: number[], b: number[]) =>
    dot(
      a,
      covariance.map((r) => dot(r, b)),
    );
  return (t) => {
    const v = values(t);
    const s = slopes(t);
    return {
      value: line(t) + dot(v, coefficients),
      slope: rise + dot(s, coefficients),
      valueVariance: between(v, v),
      slopeVariance: between(s, s),
      covariance: between(v, s),
    };
  };
}

const zeros = (size: number): Matrix => Array.from({ length: size }, () => new Array<number>(size).fill(0));

function add(matrix: Matrix, i: number, j: number, more: number): void {
  const row = matrix[i] as number[];
  row[j] = (row[j] as number) + more;
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, x, i) => sum + x * (b[i] as number), 0);
}

/** By Gauss and Jordan with pivots. */
export function inverse(matrix: Matrix): Matrix {
  const n = matrix.length;
  const work = matrix.map((r, i) => [...r, ...Array.from({ length: n }, (_, j) => Number(i === j))]);
  for (let c = 0; c < n; c++) {
    let best = c;
    for (let r = c + 1; r < n; r++)
      if (Math.abs(work[r]?.[c] as number) > Math.abs(work[best]?.[c] as number)) best = r;
    [work[c], work[best]] = [work[best] as number[], work[c] as number[]];
    const pivot = work[c] as number[];
    const p = pivot[c] as number;
    for (let k = 0; k < 2 * n; k++) pivot[k] = (pivot[k] as number) / p;
    for (let r = 0; r < n; r++) {
      const other = work[r] as number[];
      const factor = other[c] as number;
      if (r === c || factor === 0) continue;
      for (let k = 0; k < 2 * n; k++) other[k] = (other[k] as number) - factor * (pivot[k] as number);
    }
  }
  return work.map((r) => r.slice(n));
}
