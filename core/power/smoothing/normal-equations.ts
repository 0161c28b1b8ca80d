/** Square matrix, row by row. */
export type Matrix = Float64Array;

/**
 * Solution of a symmetric positive system by elimination with pivots, its rows scaled first since coefficients of
 * 1, v and v^2 differ by orders of magnitude. Null where it is singular.
 */
export function solveNormal(matrix: Matrix, right: Float64Array, size: number): Float64Array | null {
  // Plain arrays: typed ones cost more to make than a few rows to solve.
  const scale: number[] = [];
  for (let i = 0; i < size; i++) scale.push(1 / Math.sqrt(Math.max(matrix[i * size + i] as number, 1e-300)));
  const a: number[] = [];
  const x: number[] = [];
  for (let r = 0; r < size; r++) {
    for (let c = 0; c < size; c++)
      a.push((matrix[r * size + c] as number) * (scale[r] as number) * (scale[c] as number));
    x.push((right[r] as number) * (scale[r] as number));
  }
  for (let c = 0; c < size; c++) {
    let pivot = c;
    for (let r = c + 1; r < size; r++)
      if (Math.abs(a[r * size + c] as number) > Math.abs(a[pivot * size + c] as number)) pivot = r;
    if (!(Math.abs(a[pivot * size + c] as number) > 1e-14)) return null;
    if (pivot !== c) {
      for (let k = 0; k < size; k++) {
        const held = a[c * size + k] as number;
        a[c * size + k] = a[pivot * size + k] as number;
        a[pivot * size + k] = held;
      }
      const held = x[c] as number;
      x[c] = x[pivot] as number;
      x[pivot] = held;
    }
    for (let r = c + 1; r < size; r++) {
      const factor = (a[r * size + c] as number) / (a[c * size + c] as number);
      if (factor === 0) continue;
      for (let k = c; k < size; k++)
        a[r * size + k] = (a[r * size + k] as number) - factor * (a[c * size + k] as number);
      x[r] = (x[r] as number) - factor * (x[c] as number);
    }
  }
  for (let r = size - 1; r >= 0; r--) {
    let sum = x[r] as number;
    for (let k = r + 1; k < size; k++) sum -= (a[r * size + k] as number) * (x[k] as number);
    x[r] = sum / (a[r * size + r] as number);
  }
  const solution = new Float64Array(size);
  for (let i = 0; i < size; i++) solution[i] = (x[i] as number) * (scale[i] as number);
  return solution;
}
