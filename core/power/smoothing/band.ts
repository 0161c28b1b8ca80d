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
    if (i + 1 < size) x[i + 1] = (x[i + 1] as number) - (factors[at + 1] as number) * value;
    if (i + 2 < size) x[i + 2] = (x[i + 2] as number) - (factors[at + 2] as number) * value;
    if (i + 3 < size) x[i + 3] = (x[i + 3] as number) - (factors[at + 3] as number) * value;
  }
  for (let i = size - 1; i >= 0; i--) {
    const at = i * rowLength;
    let value = (x[i] as number) / (factors[at] as number);
    if (i + 1 < size) value -= (factors[at + 1] as number) * (x[i + 1] as number);
    if (i + 2 < size) value -= (factors[at + 2] as number) * (x[i + 2] as number);
    if (i + 3 < size) value -= (factors[at + 3] as number) * (x[i + 3] as number);
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

/** p' Z q for four numbers each that stand from place i on; written out, since it is asked for at each instant. */
export function productInBand(
  z: Float64Array,
  i: number,
  p: ArrayLike<number>,
  q: ArrayLike<number>,
): number {
  const [p0, p1, p2, p3] = [p[0] as number, p[1] as number, p[2] as number, p[3] as number];
  const [q0, q1, q2, q3] = [q[0] as number, q[1] as number, q[2] as number, q[3] as number];
  const at = i * rowLength;
  return (
    (z[at] as number) * p0 * q0 +
    (z[at + 1] as number) * (p0 * q1 + q0 * p1) +
    (z[at + 2] as number) * (p0 * q2 + q0 * p2) +
    (z[at + 3] as number) * (p0 * q3 + q0 * p3) +
    (z[at + 4] as number) * p1 * q1 +
    (z[at + 5] as number) * (p1 * q2 + q1 * p2) +
    (z[at + 6] as number) * (p1 * q3 + q1 * p3) +
    (z[at + 8] as number) * p2 * q2 +
    (z[at + 9] as number) * (p2 * q3 + q2 * p3) +
    (z[at + 12] as number) * p3 * q3
  );
}
