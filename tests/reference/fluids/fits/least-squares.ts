/**
 * Coefficients of y = sum c_k f_k that miss the rows least in the sum of squares, by the normal equations. Columns
 * are scaled first, as powers of a temperature differ by many orders.
 */
export function leastSquares(rows: readonly (readonly number[])[], y: readonly number[]): number[] {
  const n = rows[0]?.length ?? 0;
  const scale = Array.from({ length: n }, (_, k) => Math.hypot(...rows.map((r) => r[k] ?? 0)) || 1);
  const at = (i: number, k: number) => (rows[i]?.[k] ?? 0) / (scale[k] ?? 1);
  const sum = (f: (i: number) => number) => rows.reduce((s, _, i) => s + f(i), 0);
  const m = Array.from({ length: n }, (_, j) => [
    ...Array.from({ length: n }, (_, k) => sum((i) => at(i, j) * at(i, k))),
    sum((i) => at(i, j) * (y[i] ?? 0)),
  ]);
  for (let j = 0; j < n; j++) {
    const best = m
      .slice(j)
      .reduce((b, row, i) => (Math.abs(row[j] ?? 0) > Math.abs(m[b]?.[j] ?? 0) ? j + i : b), j);
    [m[j], m[best]] = [m[best] ?? [], m[j] ?? []];
    const pivot = m[j] ?? [];
    for (let i = 0; i < n; i++) {
      const row = m[i] ?? [];
      if (i === j) continue;
      const factor = (row[j] ?? 0) / (pivot[j] ?? 1);
      for (let k = j; k <= n; k++) row[k] = (row[k] ?? 0) - factor * (pivot[k] ?? 0);
    }
  }
  return m.map((row, k) => (row[n] ?? 0) / (row[k] ?? 1) / (scale[k] ?? 1));
}
