/** Size of a column's numbers, in the file's own unit. */
export type Spread = {
  readonly min: number;
  /** 2nd, 50th and 98th hundredth. */
  readonly low: number;
  readonly middle: number;
  readonly high: number;
  readonly max: number;
  readonly count: number;
};

const sampleCount = 4000;

/** Size of a column's numbers, from up to 4,000 evenly placed samples; NaN where there is none. */
export function spreadOf(values: Float64Array): Spread {
  const step = Math.max(1, Math.floor(values.length / sampleCount));
  const picked: number[] = [];
  for (let i = 0; i < values.length; i += step) {
    const v = values[i];
    if (v !== undefined && Number.isFinite(v)) picked.push(v);
  }
  const sorted = Float64Array.from(picked).sort();
  const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))] ?? Number.NaN;
  return { min: at(0), low: at(0.02), middle: at(0.5), high: at(0.98), max: at(1), count: sorted.length };
}
