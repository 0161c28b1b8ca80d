import type { Span } from '../span.ts';

/** Slower than this a speed channel says nothing about the gear [m/s]. */
const slowest = 4;

/**
 * Engine speed over vehicle speed [rad/m], the sign of a gear: constant while one gear is driven without slip.
 *
 * @param spans  samples that are asked for, all where nothing is said
 * @returns one number per sample, NaN where either is missing or the car hardly moves, and outside the spans
 */
export function speedRatio(
  engineSpeed: Float64Array,
  vehicleSpeed: Float64Array,
  spans: readonly Span[] = [{ from: 0, to: engineSpeed.length }],
): Float64Array {
  const ratio = new Float64Array(engineSpeed.length).fill(Number.NaN);
  for (const span of spans) fillRatio(ratio, engineSpeed, vehicleSpeed, span);
  return ratio;
}

function fillRatio(ratio: Float64Array, engine: Float64Array, vehicle: Float64Array, { from, to }: Span) {
  for (let i = from; i < to; i++) {
    const v = vehicle[i] as number;
    if (v >= slowest) ratio[i] = (engine[i] as number) / v;
  }
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

/** No crank gains or loses so much from one row to the next and has it back with the one after [rad/s], 1,400 rpm. */
const leastSpike_rad_s = 150;

/**
 * Engine speed with each single reading that is out of all reason, as 65535 or nothing among 3,000, set to the middle
 * of its neighbours; the array itself where there is none.
 */
export function withoutSpikes(engineSpeed: Float64Array): Float64Array {
  let clean: Float64Array | null = null;
  let before = engineSpeed[0] as number;
  for (let i = 1; i < engineSpeed.length - 1; i++) {
    const now = engineSpeed[i] as number;
    const leap = Math.abs(now - before);
    // Every row of a log is asked, and hardly one leaps.
    if (leap > leastSpike_rad_s) {
      const after = engineSpeed[i + 1] as number;
      const off = Math.min(leap, Math.abs(now - after));
      if (off > leastSpike_rad_s && off > 0.25 * before && Math.abs(after - before) < 0.25 * off) {
        clean ??= engineSpeed.slice();
        before = clean[i] = (before + after) / 2;
        continue;
      }
    }
    before = now;
  }
  return clean ?? engineSpeed;
}
