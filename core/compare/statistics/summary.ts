/** Arithmetic mean, corrected once for what rounding lost. NaN for none. */
export function mean(values: ArrayLike<number>): number {
  const n = values.length;
  let sum = 0;
  for (let i = 0; i < n; i++) sum += values[i] as number;
  const first = sum / n;
  let rest = 0;
  for (let i = 0; i < n; i++) rest += (values[i] as number) - first;
  return first + rest / n;
}

/**
 * Sum of squared deviations from the mean, in two passes: the one-pass form loses every digit where values
 * stand far from zero.
 *
 * Check: NIST StRD, NumAcc4 and AtmWtAg.
 */
export function squaresAboutMean(values: ArrayLike<number>): number {
  const centre = mean(values);
  let squares = 0;
  let rest = 0;
  for (let i = 0; i < values.length; i++) {
    const off = (values[i] as number) - centre;
    squares += off * off;
    rest += off;
  }
  return squares - (rest * rest) / values.length;
}

/** Sample variance (n - 1). NaN below two values. */
export function variance(values: ArrayLike<number>): number {
  return values.length < 2 ? Number.NaN : squaresAboutMean(values) / (values.length - 1);
}

/** Middle value; the mean of the two middle ones for an even count. NaN for none. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  const upper = sorted[half] ?? Number.NaN;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] ?? Number.NaN) + upper) / 2;
}
