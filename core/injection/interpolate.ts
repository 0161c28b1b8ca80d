/** Straight line through rising points, held at both ends; NaN without points. */
export function interpolate(x: readonly number[], y: readonly number[], at: number): number {
  const n = x.length;
  if (n === 0) return Number.NaN;
  if (at <= (x[0] ?? 0)) return y[0] ?? Number.NaN;
  for (let i = 1; i < n; i++) {
    const [x0 = 0, x1 = 0, y0 = 0, y1 = 0] = [x[i - 1], x[i], y[i - 1], y[i]];
    if (at <= x1) return x1 === x0 ? y1 : y0 + ((y1 - y0) * (at - x0)) / (x1 - x0);
  }
  return y[n - 1] ?? Number.NaN;
}

/** `n` even steps from `from` to `to`, both ends in. */
export function evenly(from: number, to: number, n: number): number[] {
  return Array.from({ length: n }, (_, i) => from + ((to - from) * i) / (n - 1));
}
