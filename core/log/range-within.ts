/** Lowest and highest number of a window; NaN is passed over, and of none they are infinite and the wrong way round. */
export function rangeWithin(
  values: Float64Array,
  from: number,
  to: number,
): { readonly low: number; readonly high: number } {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = from; i < to; i++) {
    const v = values[i] as number;
    if (v < low) low = v;
    if (v > high) high = v;
  }
  return { low, high };
}
