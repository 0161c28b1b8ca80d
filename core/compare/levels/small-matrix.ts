export type SquareMatrix = readonly (readonly number[])[];

/** Inverse and determinant of a small symmetric positive matrix, by Gauss and Jordan. An empty one has determinant 1. */
export function inverseAndDeterminant(matrix: SquareMatrix): {
  readonly inverse: SquareMatrix;
  readonly determinant: number;
} {
  const n = matrix.length;
  const a = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  let determinant = 1;
  for (let c = 0; c < n; c++) {
    const row = a[c] as number[];
    const pivot = row[c] as number;
    determinant *= pivot;
    for (let j = 0; j < 2 * n; j++) row[j] = (row[j] as number) / pivot;
    for (let r = 0; r < n; r++) {
      if (r === c) continue;
      const other = a[r] as number[];
      const factor = other[c] as number;
      for (let j = 0; j < 2 * n; j++) other[j] = (other[j] as number) - factor * (row[j] as number);
    }
  }
  return { inverse: a.map((row) => row.slice(n)), determinant };
}

/** v' M v */
export function quadraticForm(matrix: SquareMatrix, v: readonly number[]): number {
  let sum = 0;
  matrix.forEach((row, i) => {
    row.forEach((m, j) => {
      sum += m * (v[i] as number) * (v[j] as number);
    });
  });
  return sum;
}
