import { type Samples, toSamples } from '../../core/contract/index.ts';

/**
 * A window of a channel with at most `most` points. Each stretch keeps its smallest and its largest sample in
 * the order they came, so a knock spike of one sample is still seen.
 */
export function thinnedChannel(
  time: Float64Array,
  values: Float64Array,
  wanted: { readonly from_s: number | null; readonly to_s: number | null; readonly most: number },
): { time: Samples; values: Samples } {
  const from = wanted.from_s === null ? 0 : time.findIndex((t) => t >= (wanted.from_s as number));
  const end =
    wanted.to_s === null ? time.length : time.findLastIndex((t) => t <= (wanted.to_s as number)) + 1;
  if (from < 0 || end <= from) return { time: [], values: [] };
  if (end - from <= wanted.most) {
    return { time: toSamples(time.subarray(from, end)), values: toSamples(values.subarray(from, end)) };
  }
  const kept = keptSamples(values, from, end, wanted.most);
  return {
    time: kept.map((i) => time[i] as number),
    values: kept.map((i) => (Number.isFinite(values[i] as number) ? (values[i] as number) : null)),
  };
}

/**
 * Which samples of a stretch are enough to draw it: of each of `most / 2` parts the lowest and the highest.
 *
 * @returns  their places, rising; all of them where there are no more than `most`
 */
export function keptSamples(values: Float64Array, from: number, end: number, most: number): number[] {
  if (end - from <= most) return Array.from({ length: end - from }, (_, i) => from + i);
  const stretches = Math.floor(most / 2);
  const kept: number[] = [];
  for (let s = 0; s < stretches; s++) {
    const first = from + Math.floor(((end - from) * s) / stretches);
    const next = from + Math.floor(((end - from) * (s + 1)) / stretches);
    let low = -1;
    let high = -1;
    for (let i = first; i < next; i++) {
      const v = values[i] as number;
      if (Number.isNaN(v)) continue;
      if (low < 0 || v < (values[low] as number)) low = i;
      if (high < 0 || v > (values[high] as number)) high = i;
    }
    // A stretch of gaps stays a gap.
    if (low < 0) kept.push(first);
    else if (low === high) kept.push(low);
    else kept.push(Math.min(low, high), Math.max(low, high));
  }
  return kept;
}
