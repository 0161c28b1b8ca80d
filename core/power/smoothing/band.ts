/*
 * Symmetric positive matrices whose entries lie within three places of the diagonal, as splines of the third degree
 * make them. Row i holds the entries (i, i) to (i, i + 3).
 *
 * Source: Golub and Van Loan, Matrix Computations, section 4.3, for factor and solution; Takahashi, Fagan and Chin,
 *         A sparse bus impedance matrix (1973), for the inverse inside the band (both from memory).
 */

/** Entries in a row: the diagonal and three beside it. */
export const rowLength = 4;

/** In place, the matrix becomes its factors: the diagonal of D, and beside it the entries of L below it. */
export function factorBand(a: Float64Array, size: number): void {
  for (let i = 0; i < size; i++) {
    const at = i * rowLength;
    const pivot = a[at] as number;
    const l1 = (a[at + 1] as number) / pivot;
    const l2 = (a[at + 2] as number) / pivot;
    const l3 = (a[at + 3] as number) / pivot;
    // What this row takes from the three below it; past the end the entries are zero.
    if (i + 1 < size) {
      a[at + 4] = (a[at + 4] as number) - l1 * (a[at + 1] as number);
      a[at + 5] = (a[at + 5] as number) - l1 * (a[at + 2] as number);
      a[at + 6] = (a[at + 6] as number) - l1 * (a[at + 3] as number);
    }
    if (i + 2 < size) {
      a[at + 8] = (a[at + 8] as number) - l2 * (a[at + 2] as number);
      a[at + 9] = (a[at + 9] as number) - l2 * (a[at + 3] as number);
    }
    if (i + 3 < size) a[at + 12] = (a[at + 12] as number) - l3 * (a[at + 3] as number);
    a[at + 1] = l1;
    a[at + 2] = l2;
    a[at + 3] = l3;
  }
}

/** In place, the right side becomes the solution. */
export function solveBand(factors: Float64Array, x: Float64Array): void {
  const size = x.length;
  for (let i = 0; i < size; i++) {
    const at = i * rowLength;
    const value = x[i] as number;
    for (let k = 1; k < rowLength && i + k < size; k++)
      x[i + k] = (x[i + k] as number) - (factors[at + k] as number) * value;
  }
  for (let i = size - 1; i >= 0; i--) {
    const at = i * rowLength;
    let value = (x[i] as number) / (factors[at] as number);
    for (let k = 1; k < rowLength && i + k < size; k++)
      value -= (factors[at + k] as number) * (x[i + k] as number);
    x[i] = value;
  }
}

/** The inverse where the matrix itself has entries, into `z`. */
export function inverseBand(factors: Float64Array, size: number, z: Float64Array): void {
  z.fill(0);
  for (let i = size - 1; i >= 0; i--) {
    const at = i * rowLength;
    const l1 = factors[at + 1] as number;
    const l2 = factors[at + 2] as number;
    const l3 = factors[at + 3] as number;
    // Rows below; past the end the factors are zero, whatever stands there.
    const b = i + 1 < size ? at + 4 : at;
    const c = i + 2 < size ? at + 8 : at;
    const d = i + 3 < size ? at + 12 : at;
    const z1 = -l1 * (z[b] as number) - l2 * (z[b + 1] as number) - l3 * (z[b + 2] as number);
    const z2 = -l1 * (z[b + 1] as number) - l2 * (z[c] as number) - l3 * (z[c + 1] as number);
    const z3 = -l1 * (z[b + 2] as number) - l2 * (z[c + 1] as number) - l3 * (z[d] as number);
    z[at + 1] = z1;
    z[at + 2] = z2;
    z[at + 3] = z3;
    z[at] = 1 / (factors[at] as number) - l1 * z1 - l2 * z2 - l3 * z3;
  }
}

/** p' Z q for four numbers each that stand from place i on. */
export function productInBand(
  z: Float64Array,
  i: number,
  p: ArrayLike<number>,
  q: ArrayLike<number>,
): number {
  let sum = 0;
  for (let a = 0; a < rowLength; a++) {
    const at = (i + a) * rowLength;
    const pa = p[a] as number;
    const qa = q[a] as number;
    sum += (z[at] as number) * pa * qa;
    for (let b = a + 1; b < rowLength; b++)
      sum += (z[at + b - a] as number) * (pa * (q[b] as number) + qa * (p[b] as number));
  }
  return sum;
}
