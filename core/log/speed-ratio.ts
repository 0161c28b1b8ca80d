/** Slower than this a speed channel says nothing about the gear [m/s]. */
const slowest = 4;

/**
 * Engine speed over vehicle speed [rad/m], the sign of a gear: constant while one gear is driven without slip.
 *
 * @returns one number per sample, NaN where either is missing or the car hardly moves
 */
export function speedRatio(engineSpeed: Float64Array, vehicleSpeed: Float64Array): Float64Array {
  const ratio = new Float64Array(engineSpeed.length);
  for (let i = 0; i < ratio.length; i++) {
    const v = vehicleSpeed[i] ?? Number.NaN;
    ratio[i] = v >= slowest ? (engineSpeed[i] ?? Number.NaN) / v : Number.NaN;
  }
  return ratio;
}

/** Median of a sample and its two neighbours; cheap, since it is asked for every sample of a pull. */
export function medianOfThree(values: Float64Array, i: number): number {
  const a = values[i - 1] ?? Number.NaN;
  const b = values[i] ?? Number.NaN;
  const c = values[i + 1] ?? Number.NaN;
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
}

/** First index at or after `time_s`. */
export function indexAt(time: Float64Array, time_s: number, from: number, to: number): number {
  let low = from;
  let high = to;
  while (low < high) {
    const mid = (low + high) >> 1;
    if ((time[mid] ?? 0) < time_s) low = mid + 1;
    else high = mid;
  }
  return low;
}
