import { type Matrix, solveNormal } from '../smoothing/normal-equations.ts';
import { rollErrors } from './roll-errors.ts';
import type { Roll, sumsOf } from './roll-sums.ts';

/** What holds one roll back beyond the fit of all [N], with half of its 95 % interval [N]. */
export type RollForce = { readonly force: number; readonly half: number };

/** The three coefficients and the start speed, which each roll is free to choose. */
const own = 4;

/**
 * The force that each roll asks for beyond the fit at one speed, if it had coefficients of its own.
 *
 *   residual = dA dv/da + dB dv/db + dC dv/dc + d dv/dv0;  force = dA + dB v + dC v^2
 *
 * Least squares, errors as in roll-errors. What wind or mass change in a whole roll bends it as well as moves it: with
 * fewer terms that would pass for noise.
 *
 * @param sums    at the fit
 * @param shared  parameters that all rolls share, a, b and c first
 * @returns       in the order of the rolls; null where a roll does not tell
 */
export function rollForces(
  rolls: readonly Roll[],
  sums: ReturnType<typeof sumsOf>,
  shared: number,
  v: number,
): (RollForce | null)[] {
  return rolls.map((roll, k) => {
    const all = sums.changes[k] as Float64Array;
    const residual = sums.residuals[k] as Float64Array;
    const at = [0, 1, 2, shared].map((x) => (i: number) => all[i * (shared + 1) + x] as number);
    const changes = new Float64Array(own * residual.length);
    const normal: Matrix = new Float64Array(own * own);
    const right = new Float64Array(own);
    residual.forEach((r, i) => {
      at.forEach((of, x) => {
        changes[own * i + x] = of(i);
        right[x] = (right[x] as number) + of(i) * r;
        at.forEach((other, y) => {
          normal[own * x + y] = (normal[own * x + y] as number) + of(i) * other(i);
        });
      });
    });
    const solved = solveNormal(normal, right, own);
    const columns = at.map((_, x) =>
      solveNormal(
        normal,
        Float64Array.from(at, (__, y) => (x === y ? 1 : 0)),
        own,
      ),
    );
    if (!solved || columns.some((c) => c === null)) return null;
    const left = residual.map(
      (r, i) => r - sum(at, (x) => (solved[x] as number) * (changes[own * i + x] as number)),
    );
    const squares = left.reduce((total, r) => total + r * r, 0);
    const inverse = Float64Array.from(columns.flatMap((c) => [...(c as Float64Array)]));
    const alone = { normal, right, squares, residuals: [left], changes: [changes] };
    const { covariance, t } = rollErrors([roll], alone, inverse, own - 1);
    const share = [1, v, v * v, 0];
    const force = sum(at, (x) => (share[x] as number) * (solved[x] as number));
    const variance = sum(at, (x) =>
      sum(at, (y) => (share[x] as number) * (share[y] as number) * (covariance[own * x + y] as number)),
    );
    return { force, half: t * Math.sqrt(Math.max(0, variance)) };
  });
}

function sum(over: readonly unknown[], of: (x: number) => number): number {
  return over.reduce<number>((total, _, x) => total + of(x), 0);
}
