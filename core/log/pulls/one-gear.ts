import { medianOf } from '../median.ts';
import type { Span } from '../span.ts';
import { indexAt } from '../speeds/speed-ratio.ts';
import { torqueBack } from './torque-back.ts';

/** What made engine speed fall or jump while the pedal was down. */
export type SpeedBreak = {
  readonly kind: 'gear-change' | 'limiter' | 'spin';
  /** Last sample before and first sample after. */
  readonly from: number;
  readonly to: number;
};

export type GearSpan = Span & {
  /** When it began, where a gear change tells it better than the first row [s]. */
  readonly startAt_s?: number | undefined;
  /** Begins or ends where the gear was changed under full throttle. */
  readonly afterChange: boolean;
  readonly beforeChange: boolean;
  readonly breaks: readonly SpeedBreak[];
};

/** Engine speed falls further than any gear's noise, and less than the closest gears of a box (common practice). */
const leastFall = 0.05;
/** Neighbouring gears lie at least this far apart (common practice: 0.65 to 0.88). */
const nearestGears = 0.92;
const leastFall_rad_s = 20;
/** Engine speed that climbs by this share within `jump_s` has changed down. */
const leastJump = 1.2;
const leastGearJump = 1.1;
/** A change down raises the gear by this share at least; a converter that slips at a tip-in by less (common practice). */
const leastGearRise = 1.15;
const jump_s = 0.45;
/** Engine speed this much ahead of the road is wheels that let go (common practice). */
const leastSpin = 1.06;
/** Spin builds up within this time (common practice). */
const spinBuilds_s = 0.4;

/**
 * Parts a span at full throttle where the gear changes. Falls of engine speed that are the limiter's or wheels
 * catching grip again don't part it, and are handed back as breaks.
 *
 * With a speed ratio the gear before and after is compared. Without, the shape tells: on the limiter engine speed
 * comes straight back, after spin it falls back to no less than before, after a gear change it does neither.
 *
 * @param engineSpeed  [rad/s]
 * @param ratio        engine speed over vehicle speed, null where no speed is logged
 */
export function splitByGear(
  engineSpeed: Float64Array,
  ratio: Float64Array | null,
  time: Float64Array,
  span: Span,
): GearSpan[] {
  const spans: GearSpan[] = [];
  let from = span.from;
  let startAt_s: number | undefined;
  let afterChange = false;
  let breaks: SpeedBreak[] = [];
  const close = (to: number, beforeChange: boolean) => {
    if (to > from) spans.push({ from, to, startAt_s, afterChange, beforeChange, breaks });
    breaks = [];
  };
  let top = from;
  // The sample `jump_s` before i, walked along.
  let back = from;
  let i = from + 1;
  while (i < span.to) {
    const now = engineSpeed[i] ?? Number.NaN;
    const high = engineSpeed[top] ?? Number.NaN;
    if (Number.isNaN(now)) {
      i++;
      continue;
    }
    if (now >= high || Number.isNaN(high)) {
      if (back < from) back = from;
      while (back < i && (time[back] as number) < (time[i] as number) - jump_s) back++;
      const jumped = jumpAt(engineSpeed, ratio, time, from, back, i, span.to);
      if (jumped) {
        close(jumped.from + 1, true);
        from = jumped.to;
        startAt_s = undefined;
        afterChange = true;
        i = top = from;
      } else top = i;
      i++;
      continue;
    }
    if (now > high - Math.max(leastFall * high, leastFall_rad_s)) {
      i++;
      continue;
    }
    const bottom = lowestAfter(engineSpeed, i, span.to, 0.25 * (high - now));
    const kind = kindOfFall(engineSpeed, ratio, time, from, top, bottom, span.to);
    if (kind === 'gear-change') {
      close(top + 1, true);
      const back_s = torqueBack(engineSpeed, time, bottom, span.to);
      startAt_s = back_s > (time[bottom] ?? 0) ? back_s : undefined;
      from = indexAt(time, back_s - 1e-9, bottom, span.to - 1);
      afterChange = true;
      top = from;
      i = from + 1;
      continue;
    }
    breaks.push({ kind, from: top, to: bottom });
    top = bottom;
    i = bottom + 1;
  }
  close(span.to, false);
  return spans;
}

/** Where the fall is over: the first sample within noise of the lowest, before engine speed climbs by `rise`. */
function lowestAfter(engineSpeed: Float64Array, from: number, to: number, rise: number): number {
  let lowest = from;
  for (let i = from; i < to; i++) {
    const v = engineSpeed[i] ?? Number.NaN;
    const low = engineSpeed[lowest] ?? Number.NaN;
    if (v <= low) lowest = i;
    else if (v > low + Math.max(rise, 5)) break;
  }
  const level = 1.008 * (engineSpeed[lowest] ?? 0);
  for (let i = from; i < lowest; i++) if ((engineSpeed[i] ?? Number.NaN) <= level) return i;
  return lowest;
}

function kindOfFall(
  engineSpeed: Float64Array,
  ratio: Float64Array | null,
  time: Float64Array,
  from: number,
  top: number,
  bottom: number,
  to: number,
): SpeedBreak['kind'] {
  const topTime = time[top] ?? 0;
  const bottomTime = time[bottom] ?? 0;
  const high = engineSpeed[top] ?? 0;
  const low = engineSpeed[bottom] ?? 0;
  if (ratio) {
    const before = medianOf(
      ratio,
      Math.max(from, indexAt(time, topTime - 1, from, top)),
      indexAt(time, topTime - 0.2, from, top) + 1,
    );
    const after = medianOf(ratio, bottom, Math.min(to, indexAt(time, bottomTime + 0.8, bottom, to)));
    if (!Number.isNaN(before / after)) {
      if (after / before < nearestGears) return 'gear-change';
      // A limiter holds engine and road together; wheels that let go do not, also where engine speed is soon back.
      const atTop = medianOf(ratio, Math.max(from, top - 1), Math.min(to, top + 2));
      if (atTop / before > leastSpin) return 'spin';
      return comesBack(engineSpeed, time, bottom, to, high) ? 'limiter' : 'spin';
    }
  }
  if (comesBack(engineSpeed, time, bottom, to, high)) return 'limiter';
  // The road's own engine speed only rose since the wheels let go; a gear change leads below it.
  const earlier = medianOf(
    engineSpeed,
    indexAt(time, topTime - spinBuilds_s - 0.15, 0, top),
    indexAt(time, topTime - spinBuilds_s, 0, top) + 1,
  );
  if (low > 0.97 * earlier) return 'spin';
  return low < nearestGears * high ? 'gear-change' : 'limiter';
}

/** On the limiter engine speed is back within half a second. */
function comesBack(
  engineSpeed: Float64Array,
  time: Float64Array,
  bottom: number,
  to: number,
  high: number,
): boolean {
  const until = (time[bottom] ?? 0) + 0.5;
  for (let i = bottom; i < to && (time[i] ?? 0) <= until; i++)
    if ((engineSpeed[i] ?? 0) > 0.975 * high) return true;
  return false;
}

/** A change down under full throttle: engine speed leaps while the car does not. */
function jumpAt(
  engineSpeed: Float64Array,
  ratio: Float64Array | null,
  time: Float64Array,
  from: number,
  back: number,
  i: number,
  to: number,
): { from: number; to: number } | null {
  const before = engineSpeed[back] ?? Number.NaN;
  const now = engineSpeed[i] ?? Number.NaN;
  // Asked of nearly every sample of a pull: what the gear says is only worked out where it may matter.
  if (!(now > leastGearJump * before)) return null;
  const gearRise = ratio ? gearRiseOver(ratio, time, from, back, i, to) : Number.NaN;
  // Where the road's speed tells the gear, the closest gears of a box part as well.
  if (!(now > (gearRise > leastGearRise ? leastGearJump : leastJump) * before)) return null;
  // A low gear climbs as fast all the way; a leap ends.
  const ahead = Math.min(to - 1, indexAt(time, (time[i] ?? 0) + jump_s, i, to));
  const later = engineSpeed[ahead] ?? now;
  const span = (time[ahead] ?? 0) - (time[i] ?? 0);
  const slopeBefore = (now - before) / Math.max(1e-6, (time[i] ?? 0) - (time[back] ?? 0));
  if (span < 0.2) return null;
  const isEngaged =
    ratio !== null &&
    gearRise > leastGearRise &&
    Math.abs(medianOf(ratio, i, i + 3) / medianOf(ratio, ahead - 2, ahead + 1) - 1) < 0.03;
  if (!isEngaged && (later - now) / span > 0.4 * slopeBefore) return null;
  // Spin leaps too, but falls back; a gear stays.
  let high = now;
  for (let k = i; k < to && (time[k] ?? 0) < (time[i] ?? 0) + 0.8; k++) {
    const v = engineSpeed[k] ?? now;
    if (v < 0.98 * high) return null;
    if (v > high) high = v;
  }
  if (!Number.isNaN(gearRise) && gearRise < leastGearRise) return null;
  return { from: back, to: i };
}

/** The gear just after over the gear before, as engine speed over vehicle speed; NaN where either is unknown. */
function gearRiseOver(
  ratio: Float64Array,
  time: Float64Array,
  from: number,
  back: number,
  i: number,
  to: number,
): number {
  const before = medianOf(ratio, indexAt(time, (time[back] ?? 0) - 0.6, from, back), back + 1);
  const after = medianOf(ratio, i, Math.min(to, indexAt(time, (time[i] ?? 0) + jump_s, i, to) + 1));
  return after / before;
}
