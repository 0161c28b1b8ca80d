import { medianOf } from '../median.ts';
import { lineThrough } from '../rises/steady-rise.ts';
import type { Span } from '../span.ts';
import { indexAt } from '../speeds/speed-ratio.ts';
import { usualStep } from '../time/time-axis.ts';
import type { GearSpan } from './one-gear.ts';

/** A cut of torque between two gears is shorter than twice this [s]; at 10 Hz that is three samples. */
const halfWindow_s = 0.15;
/** Acceleration that falls to this share of what stands on both sides of it was cut. */
const dipShare = 0.5;
/** Where the acceleration beside a dip is taken [s]. */
const beside = { near_s: 0.3, far_s: 1 } as const;
/** A slope that stands out less than this many times from its noise shows no dip. */
const clearOfNoise = 5;
/** Renewed less often than this a speed hides a gear change altogether [s]. */
const slowestRenewal_s = 0.15;

/**
 * Parts a span at full throttle where acceleration falls away and comes back: a gear change under full throttle, or a
 * cut of torque; which of the two, only the force of the parts tells (gears-by-force). For logs of road speed alone.
 *
 * @param speed      of the road, any unit
 * @param renewal_s  usual time between two readings [s]
 */
export function splitByDips(
  speed: Float64Array,
  time: Float64Array,
  span: Span,
  renewal_s: number,
): GearSpan[] {
  const whole = { ...span, afterChange: false, beforeChange: false, breaks: [] };
  if (renewal_s > slowestRenewal_s) return [whole];
  const half_s = Math.max(halfWindow_s, 1.5 * renewal_s);
  const slope = slopesIn(speed, time, span, half_s);
  const noise = noiseIn(speed, time, span, half_s, renewal_s);
  const at = (i: number) => time[i] ?? 0;
  const index = (t: number) => indexAt(time, t, span.from, span.to);
  const usual = (from_s: number, to_s: number) =>
    medianOf(slope, index(from_s) - span.from, index(to_s) - span.from);
  const parts: GearSpan[] = [];
  let from = span.from;
  let afterChange = false;
  for (let i = span.from + 1; i < span.to - 1; i++) {
    const low = slope[i - span.from] as number;
    const next = slope[i + 1 - span.from] as number;
    if (!(low <= next) || !(low < (slope[i - 1 - span.from] as number))) continue;
    if (at(i) - at(from) < beside.near_s) continue;
    const before = usual(Math.max(at(from), at(i) - beside.far_s), at(i) - beside.near_s);
    const after = usual(at(i) + beside.near_s, at(i) + beside.far_s);
    if (!(Math.min(before, after) > clearOfNoise * noise)) continue;
    if (!(low < dipShare * Math.min(before, after))) continue;
    // The window is even on both sides: a step of the slope is crossed half way where it stands.
    let left = i;
    while (left > from && (slope[left - span.from] as number) < (before + low) / 2) left--;
    let right = i;
    while (right < span.to - 1 && (slope[right - span.from] as number) < (after + low) / 2) right++;
    parts.push({ from, to: left + 1, afterChange, beforeChange: true, breaks: [] });
    from = right;
    afterChange = true;
    i = right;
  }
  parts.push({ from, to: span.to, afterChange, beforeChange: false, breaks: [] });
  return parts;
}

/** Slope over a window around each sample of the span, of samples inside it alone. */
function slopesIn(speed: Float64Array, time: Float64Array, span: Span, half_s: number): Float64Array {
  const out = new Float64Array(span.to - span.from);
  let a = span.from;
  let b = span.from;
  for (let i = span.from; i < span.to; i++) {
    const t = time[i] ?? 0;
    while (a < i && (time[a] ?? 0) < t - half_s - 1e-9) a++;
    while (b < span.to && (time[b] ?? 0) <= t + half_s + 1e-9) b++;
    out[i - span.from] = lineThrough(speed, time, a, b, t).slope;
  }
  return out;
}

/** Noise of such a slope, from the middle bend of single readings: rows between two of them hold no noise of their own. */
function noiseIn(
  speed: Float64Array,
  time: Float64Array,
  span: Span,
  half_s: number,
  renewal_s: number,
): number {
  const rows = Math.max(1, Math.round(renewal_s / (usualStep(time) || renewal_s)));
  const bends: number[] = [];
  let step = Number.POSITIVE_INFINITY;
  for (let i = span.from + 2 * rows; i < span.to; i++) {
    const bend = Math.abs((speed[i] ?? 0) - 2 * (speed[i - rows] ?? 0) + (speed[i - 2 * rows] ?? 0));
    if (!Number.isNaN(bend)) bends.push(bend);
    const change = Math.abs((speed[i] ?? 0) - (speed[i - rows] ?? 0));
    if (change > 1e-6) step = Math.min(step, change);
  }
  const n = 2 * Math.floor(half_s / renewal_s + 1e-6) + 1;
  // Second differences have sqrt(6) times the noise; median to standard deviation is 1.4826 (normal spread).
  const scatter = (1.4826 * medianOf(Float64Array.from(bends), 0, bends.length)) / Math.sqrt(6);
  // A step of the written number is noise of a twelfth of its square, even where most bends are none.
  const reading = Math.max(scatter, bends.length > 0 ? step / Math.sqrt(12) : 0);
  return reading / (renewal_s * Math.sqrt((n * (n * n - 1)) / 12));
}
