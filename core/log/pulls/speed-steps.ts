import { medianOf } from '../median.ts';
import type { Span } from '../span.ts';
import { usualStep } from '../time/time-axis.ts';

/** A reading that stands longer than this many usual renewals stood still in truth. */
const longestStand = 3;

/**
 * Usual time between two readings that differ while a channel moves [s]: more than the step of the rows where a
 * logger repeats each reading, or writes steps that are coarse for the movement.
 */
export function renewalOf(values: Float64Array, time: Float64Array): number {
  const step = usualStep(time) || 0.05;
  const runs: number[] = [];
  const stride = Math.max(1, Math.floor(values.length / 20_000));
  let since = 0;
  for (let i = 1; i < values.length; i++) {
    if (values[i] === values[i - 1] || Number.isNaN(values[i])) continue;
    // Where it climbs: at rest it would repeat in any log.
    const run = (time[i] ?? 0) - (time[since] ?? 0);
    if ((values[i] ?? 0) > (values[i - 1] ?? 0) && run < 1.5 && i % stride === 0) runs.push(run);
    since = i;
  }
  const usual = medianOf(Float64Array.from(runs), 0, runs.length);
  return usual > 1.5 * step ? usual : step;
}

/** The channel with lines in place of its steps, where its readings are repeated; else itself. */
export function withoutSteps(
  values: Float64Array,
  time: Float64Array,
  segments: readonly Span[],
  renewal_s: number,
): Float64Array {
  if (!(renewal_s > 1.4 * (usualStep(time) || 0.05))) return values;
  const out = values.slice();
  for (const { from, to } of segments) {
    let since = from;
    for (let i = from + 1; i < to; i++) {
      if (values[i] === values[since] || Number.isNaN(values[i])) continue;
      const [t0, t1] = [time[since] ?? 0, time[i] ?? 0];
      const [v0, v1] = [values[since] ?? 0, values[i] ?? 0];
      if (t1 - t0 <= longestStand * renewal_s)
        for (let k = since + 1; k < i; k++) out[k] = v0 + ((v1 - v0) * ((time[k] ?? 0) - t0)) / (t1 - t0);
      since = i;
    }
  }
  return out;
}
