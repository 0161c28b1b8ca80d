/** A stretch of one channel: `time` rises, both arrays one length, indices from `from` up to but not `to`. */
export type Series = {
  readonly time: Float64Array;
  readonly values: Float64Array;
  readonly from: number;
  readonly to: number;
};

/**
 * A channel read at given moments, straight lines between its finite samples.
 *
 * @param series    samples; NaN ones are stepped over
 * @param moments   [s], rising, length n
 * @param widestGap [s] longest stretch between two samples that is bridged
 * @returns         length n; NaN outside the samples and in wider gaps
 */
export function readAt(series: Series, moments: Float64Array, widestGap: number): Float64Array {
  const { time, values, from, to } = series;
  const out = new Float64Array(moments.length).fill(Number.NaN);
  const next = (i: number) => {
    let k = i;
    while (k < to && Number.isNaN(values[k] as number)) k++;
    return k;
  };
  let left = next(from);
  if (left >= to) return out;
  let right = next(left + 1);
  for (let m = 0; m < moments.length; m++) {
    const moment = moments[m] as number;
    while (right < to && (time[right] as number) < moment) {
      left = right;
      right = next(right + 1);
    }
    const leftTime = time[left] as number;
    if (moment === leftTime) {
      out[m] = values[left] as number;
      continue;
    }
    if (right >= to || moment < leftTime) continue;
    const span = (time[right] as number) - leftTime;
    if (span > widestGap || span <= 0) continue;
    const share = (moment - leftTime) / span;
    out[m] = (values[left] as number) * (1 - share) + (values[right] as number) * share;
  }
  return out;
}
