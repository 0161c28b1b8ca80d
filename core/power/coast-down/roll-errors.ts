import type { Matrix } from '../smoothing/normal-equations.ts';
import type { Roll, sumsOf } from './roll-sums.ts';

/**
 * Covariance of what rolls were fitted with, and Student's t that goes with it.
 *
 *   V = s^2 N^-1 + q^2 N^-1 (sum over steps dt G G') N^-1
 *
 * Two things err. A reading does so by itself (s, all that the residuals scatter by). And wind and road push the car:
 * speed keeps that, so its errors add up like a random walk of q^2 [m^2/s^3], and a push at one instant moves all
 * samples after it (G: what they change by each parameter, summed from there to the end). q^2 is read from how far
 * residuals move over an eighth of the roll, less what one step moves them.
 *
 * Source: least squares with errors of known covariance, as in Seber and Wild, Nonlinear Regression, chapter 6 (from
 *         memory).
 */
export function rollErrors(
  rolls: readonly Roll[],
  sums: ReturnType<typeof sumsOf>,
  inverse: Matrix,
  shared: number,
): { readonly covariance: Matrix; readonly t: number } {
  const size = shared + rolls.length;
  const samples = rolls.reduce((sum, r) => sum + r.time.length, 0);
  const variance = sums.squares / Math.max(1, samples - size);
  const parts = 8;
  const free = Math.max(1, parts * rolls.length - size);
  const walk = (walkOf(rolls, sums.residuals, parts) * parts * rolls.length) / free;
  const pushes = new Float64Array(size * size);
  rolls.forEach((roll, k) => {
    const change = sums.changes[k] as Float64Array;
    const at = [...Array(shared).keys(), shared + k];
    const after = new Float64Array(shared + 1);
    for (let i = roll.time.length - 1; i > 0; i--) {
      const dt = (roll.time[i] as number) - (roll.time[i - 1] as number);
      for (let x = 0; x <= shared; x++)
        after[x] = (after[x] as number) + (change[i * (shared + 1) + x] as number);
      for (let x = 0; x <= shared; x++)
        for (let y = 0; y <= shared; y++) {
          const cell = (at[x] as number) * size + (at[y] as number);
          pushes[cell] = (pushes[cell] as number) + dt * (after[x] as number) * (after[y] as number);
        }
    }
  });
  const around = times(times(inverse, pushes, size), inverse, size);
  const covariance = inverse.map((x, i) => variance * x + walk * (around[i] as number));
  return { covariance, t: studentOf(free) };
}

/** Growth of the squared residual with time [m^2/s^3], from an eighth of each roll against one step. */
function walkOf(rolls: readonly Roll[], residuals: readonly Float64Array[], parts: number): number {
  let sum = 0;
  rolls.forEach((roll, k) => {
    const own = residuals[k] as Float64Array;
    const n = own.length;
    const lag = Math.max(2, Math.round(n / parts));
    const step = ((roll.time[n - 1] as number) - (roll.time[0] as number)) / (n - 1);
    sum += Math.max(0, movedBy(own, lag) - movedBy(own, 1)) / ((lag - 1) * step);
  });
  return sum / rolls.length;
}

function movedBy(values: Float64Array, lag: number): number {
  let sum = 0;
  for (let i = lag; i < values.length; i++) sum += ((values[i] as number) - (values[i - lag] as number)) ** 2;
  return sum / Math.max(1, values.length - lag);
}

function times(a: Matrix, b: Matrix, size: number): Matrix {
  const out = new Float64Array(size * size);
  for (let r = 0; r < size; r++)
    for (let c = 0; c < size; c++)
      for (let k = 0; k < size; k++)
        out[r * size + c] =
          (out[r * size + c] as number) + (a[r * size + k] as number) * (b[k * size + c] as number);
  return out;
}

/**
 * Student's t at 97.5 %, as a series about the normal distribution.
 *
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.5 (from memory).
 * Check:  10 degrees of freedom: 2.228.
 */
function studentOf(freedom: number): number {
  const z = 1.959964;
  const n = Math.max(2, freedom);
  return (
    z +
    (z ** 3 + z) / (4 * n) +
    (5 * z ** 5 + 16 * z ** 3 + 3 * z) / (96 * n ** 2) +
    (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / (384 * n ** 3)
  );
}
