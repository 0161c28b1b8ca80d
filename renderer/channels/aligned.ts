import type { Trace } from './use-traces.ts';

export type Aligned = Trace & { readonly x: Float64Array };

/**
 * Traces against one common axis: the time from the start of their pull [s], or the engine speed [rad/s] read at
 * each sample's moment. A pull without engine speed has no place on that axis and is left out.
 */
export function aligned(traces: readonly Trace[], along: 'time' | 'engineSpeed'): Aligned[] {
  if (along === 'time') return traces.map((t) => ({ ...t, x: t.time }));
  return traces.flatMap((trace) => {
    const speed = traces.find((t) => t.key === 'engineSpeed' && t.pullId === trace.pullId);
    return speed ? [{ ...trace, x: trace.time.map((t) => valueAt(speed.time, speed.values, t)) }] : [];
  });
}

/** A value between samples by a straight line; NaN outside them and beside gaps. `times` rises. */
function valueAt(times: Float64Array, values: Float64Array, t: number): number {
  let low = 0;
  let high = times.length - 1;
  if (high < 0 || t < (times[0] as number) || t > (times[high] as number)) return Number.NaN;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((times[middle] as number) <= t) low = middle;
    else high = middle;
  }
  const [t0, t1] = [times[low] as number, times[high] as number];
  const [v0, v1] = [values[low] as number, values[high] as number];
  return t1 > t0 ? v0 + ((v1 - v0) * (t - t0)) / (t1 - t0) : v0;
}

/**
 * What pulls read at one place of the axis: the mean over them, each by its nearest finite sample no further away
 * than `reach`; null where none has one.
 */
export function readAt(pulls: readonly Aligned[], x: number, reach: number): number | null {
  const read = pulls.flatMap((pull) => {
    let nearest = -1;
    let least = reach;
    for (let i = 0; i < pull.x.length; i++) {
      const distance = Math.abs((pull.x[i] as number) - x);
      if (distance <= least && Number.isFinite(pull.values[i] as number)) {
        least = distance;
        nearest = i;
      }
    }
    return nearest < 0 ? [] : [pull.values[nearest] as number];
  });
  return read.length === 0 ? null : read.reduce((a, b) => a + b) / read.length;
}
