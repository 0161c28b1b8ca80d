/**
 * Where a rising function crosses `target`, by bisection between bounds that are widened until they hold it.
 * Slow and sure: quantiles are asked for a few dozen times a verdict.
 */
export function crossing(
  rising: (x: number) => number,
  target: number,
  bounds: { readonly low: number; readonly high: number },
): number {
  let { low, high } = bounds;
  for (let k = 0; k < 1100 && rising(high) < target; k++) high = high > 0 ? high * 2 : high / 2 + 1;
  for (let k = 0; k < 1100 && rising(low) > target; k++) low = low < 0 ? low * 2 : low / 2 - 1;
  for (let k = 0; k < 200; k++) {
    const middle = low + (high - low) / 2;
    if (middle === low || middle === high) break;
    if (rising(middle) < target) low = middle;
    else high = middle;
  }
  return low + (high - low) / 2;
}
