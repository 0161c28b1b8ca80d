import { indexAt, medianOf } from './speed-ratio.ts';
import { kneeTime, lineThrough, slopeOf } from './steady-rise.ts';
import type { Span } from './time-axis.ts';

/** What is logged beside engine speed, SI; null where it is not. */
export type RiseSignals = {
  readonly engineSpeed: Float64Array;
  /** Engine speed over vehicle speed. */
  readonly ratio: Float64Array | null;
  /** [Pa gauge]; may be measured before the plate. */
  readonly boost: Float64Array | null;
  readonly time: Float64Array;
  readonly segments: readonly Span[];
};

/** Slower than this no gear climbs at full throttle [rad/s2], 100 rpm per second (common practice). */
const slowestRise = 10;
/** A rise is over where it has sunk to this share of its own usual slope. */
const endOfRise = 0.35;
const shortest_s = 0.8;
const leastRise = 1.09;
/** Part throttle makes less than this share of the most torque seen at the same engine speed. */
const fullShare = 0.75;
const fullBoostShare = 0.7;
/** The foot takes this long to lift; the knee lies in the middle (common practice). */
const halfLift_s = 0.1;

/** From the knee to the stop of the pedal, on the middle of quick and slow feet (common practice). */
const kneeToFull_s = 0.12;

type Rise = Span & { readonly segment: Span };

/**
 * Spans of sustained acceleration, for a log with neither pedal nor throttle. The ends are where the slope of
 * engine speed breaks. Gentle accelerations are told from full throttle by boost where it is logged, else by the
 * torque that the acceleration needs, each beside the strongest of the file.
 *
 * Valid: ends within 0.3 s of the pedal's in nine pulls of ten; a foot that comes down slowly, or a stay on the
 *        limiter before the lift, leaves no sharper trace in engine speed. Three quarters of the pedal pass for full.
 */
export function risingSpans(signals: RiseSignals): Span[] {
  const { engineSpeed, time, segments } = signals;
  const slope = slopeOf(engineSpeed, time, segments);
  const rises: Rise[] = [];
  for (const segment of segments) rises.push(...risesIn(signals, slope, segment));
  const strongest = strengthOf(signals, slope, rises);
  return rises
    .filter((_, i) => strongest[i])
    .map((rise) => withEnds(signals, rise))
    .filter((span) => span.to - span.from > 2);
}

function risesIn(signals: RiseSignals, slope: Float64Array, segment: Span): Rise[] {
  const { engineSpeed, time } = signals;
  const found: Rise[] = [];
  let i = segment.from;
  while (i < segment.to) {
    if (!((slope[i] ?? 0) > slowestRise)) {
      i++;
      continue;
    }
    let end = i;
    while (end < segment.to && (slope[end] ?? 0) > slowestRise) end++;
    // Within it, what is steep as a pull is: a slow run-up before it does not count.
    const usual = medianOf(slope, i, end);
    let a = i;
    let b = end;
    while (a < b && (slope[a] ?? 0) < endOfRise * usual) a++;
    while (b > a && (slope[b - 1] ?? 0) < endOfRise * usual) b--;
    if (b > a) found.push({ from: a, to: b, segment });
    i = end;
  }
  return joined(found, signals).filter(({ from, to }) => {
    const rise = (engineSpeed[to - 1] ?? 0) / (engineSpeed[from] ?? 1);
    return (time[to - 1] ?? 0) - (time[from] ?? 0) >= shortest_s && rise >= leastRise;
  });
}

/** Rises that a moment of spin or of the limiter parts are one; a gear change leads further down. */
function joined(rises: readonly Rise[], signals: RiseSignals): Rise[] {
  const { engineSpeed, time } = signals;
  const found: Rise[] = [];
  for (const rise of rises) {
    const last = found.at(-1);
    const gap = last ? (time[rise.from] ?? 0) - (time[last.to - 1] ?? 0) : Number.POSITIVE_INFINITY;
    const isOne = last && gap < 0.4 && (engineSpeed[rise.from] ?? 0) > 0.9 * (engineSpeed[last.to - 1] ?? 0);
    if (isOne && last.to - last.from > 2) found[found.length - 1] = { ...last, to: rise.to };
    else found.push(rise);
  }
  return found;
}

/** Which rises are at full throttle. */
function strengthOf(signals: RiseSignals, slope: Float64Array, rises: readonly Rise[]): boolean[] {
  const { boost, ratio, time } = signals;
  if (boost) {
    const peaks = rises.map((r) => {
      const late = boost.subarray((r.from + r.to) >> 1, r.to);
      return medianOf(late, 0, late.length);
    });
    const most = peaks.reduce((a, b) => Math.max(a, b), 0);
    // An engine without boost in the log, or a spool too late to tell: the acceleration decides below.
    if (most > 2e4) return peaks.map((p) => p >= fullBoostShare * most);
  }
  const curves = rises.map((r) => effortCurve(signals, slope, r));
  const envelope = new Map<number, number>();
  for (const curve of curves)
    for (const [bin, effort] of curve) envelope.set(bin, Math.max(effort, envelope.get(bin) ?? 0));
  const levels = curves.map((curve) => middleOf([...curve.values()]));
  const highest = levels.reduce((a, b) => Math.max(a, b), 0);
  return curves.map((curve, i) => {
    const share = middleOf([...curve].map(([bin, effort]) => effort / (envelope.get(bin) ?? effort)));
    const level = (levels[i] ?? 0) / highest;
    if (ratio) return share >= fullShare && level >= 0.5;
    // Without a road speed a higher gear looks weak; one that follows a pull at once is its next gear.
    if (share >= fullShare && level >= 0.35) return true;
    const before = rises[i - 1];
    const rise = rises[i];
    if (!before || !rise || (levels[i - 1] ?? 0) < 0.7 * highest) return false;
    return (time[rise.from] ?? 0) - (time[before.to - 1] ?? 0) < 1 && level > 0.25;
  });
}

/** Engine speeds are compared in bins of so many rad/s, some 500 rpm. */
const binWidth = 50;

/**
 * Torque over engine speed, up to a factor of the car's own: acceleration and a usual drag over the gear's ratio;
 * the slope of engine speed itself where no road speed is logged.
 */
function effortCurve(signals: RiseSignals, slope: Float64Array, rise: Span): Map<number, number> {
  const { engineSpeed, ratio } = signals;
  const bins = new Map<number, number[]>();
  for (let i = rise.from; i < rise.to; i++) {
    const w = engineSpeed[i] ?? Number.NaN;
    const k = ratio ? (ratio[i] ?? Number.NaN) : 1;
    const v = w / k;
    // 0.15 m/s2 of rolling, 3e-4 v^2 of air: a middling car (common practice).
    const effort = ratio ? ((slope[i] ?? 0) / k + 0.15 + 3e-4 * v * v) / k : (slope[i] ?? 0);
    if (Number.isNaN(effort)) continue;
    const list = bins.get(Math.round(w / binWidth));
    if (list) list.push(effort);
    else bins.set(Math.round(w / binWidth), [effort]);
  }
  return new Map([...bins].map(([bin, list]) => [bin, list.reduce((a, b) => a + b, 0) / list.length]));
}

function middleOf(list: number[]): number {
  return list.sort((a, b) => a - b)[list.length >> 1] ?? 0;
}

/** Moves the ends to where the slope breaks. */
function withEnds(signals: RiseSignals, rise: Rise): Span {
  const { engineSpeed, time } = signals;
  const { segment } = rise;
  const start = time[rise.from] ?? 0;
  const end = time[rise.to - 1] ?? 0;
  let from = rise.from;
  const lowest = shiftBefore(signals, rise);
  if (lowest !== null) {
    // The box changes under full throttle and pulls at once; a foot has to come down again first.
    const until = indexAt(time, (time[lowest] ?? 0) + 0.3, lowest, rise.to);
    const { slope } = lineThrough(engineSpeed, time, lowest, until, 0);
    from = slope > 0.6 * usualSlope(signals, rise) ? lowest : Math.max(lowest, rise.from);
  } else if (start - (time[segment.from] ?? 0) < 0.4) from = segment.from;
  else {
    const knee = kneeTime(engineSpeed, time, segment, {
      from_s: start - 0.6,
      to_s: start + 0.5,
      before_s: 0.5,
      after_s: 0.4,
      turn: 1,
    });
    from = indexAt(time, knee + kneeToFull_s, segment.from, segment.to);
  }
  let to = rise.to;
  const highest = shiftAfter(signals, rise);
  if (highest !== null) to = highest + 1;
  else if ((time[segment.to - 1] ?? 0) - end < 0.4) to = segment.to;
  else {
    const knee =
      heldOnLimiter(signals, rise) ??
      kneeTime(engineSpeed, time, segment, {
        from_s: end - 0.4,
        to_s: end + 0.5,
        before_s: 0.4,
        after_s: 0.3,
        turn: -1,
      }) - halfLift_s;
    to = Math.max(from + 1, indexAt(time, knee + 1e-9, segment.from, segment.to));
  }
  return { from, to };
}

/** Mean slope of the rise's first second. */
function usualSlope(signals: RiseSignals, rise: Rise): number {
  const { engineSpeed, time } = signals;
  const to = indexAt(time, (time[rise.from] ?? 0) + 1, rise.from, rise.to);
  return lineThrough(engineSpeed, time, rise.from, to, 0).slope;
}

/** Time to which engine speed stays level at the top; null where it turns down at once. */
function heldOnLimiter(signals: RiseSignals, rise: Rise): number | null {
  const { engineSpeed, time } = signals;
  const top = medianOf(engineSpeed, rise.to - 2, Math.min(rise.segment.to, rise.to + 3));
  let i = rise.to;
  while (i < rise.segment.to && (engineSpeed[i] ?? 0) > 0.985 * top) i++;
  const end = time[Math.max(rise.to, i - 1)] ?? 0;
  const start = time[rise.to - 1] ?? 0;
  if (end - start <= 0.3) return null;
  // A car rolling out of a pull slows by 1.5 % a second at least; on the limiter the mean stands.
  const { slope } = lineThrough(engineSpeed, time, rise.to, i, end);
  return Math.abs(slope) < 0.004 * top ? end : null;
}

/**
 * Sample of the highest engine speed where a gear change follows the rise at once: engine speed then falls by 8 %
 * within half a second, faster than any car slows in gear. Null where none follows.
 */
function shiftAfter(signals: RiseSignals, rise: Rise): number | null {
  const { engineSpeed, time } = signals;
  const a = indexAt(time, (time[rise.to - 1] ?? 0) - 0.3, rise.from, rise.segment.to);
  const b = indexAt(time, (time[rise.to - 1] ?? 0) + 0.4, a, rise.segment.to);
  let top = a;
  for (let i = a; i < b; i++) if ((engineSpeed[i] ?? 0) > (engineSpeed[top] ?? 0)) top = i;
  const c = indexAt(time, (time[top] ?? 0) + 0.5, top, rise.segment.to);
  for (let i = top; i < c; i++) if ((engineSpeed[i] ?? 0) < 0.92 * (engineSpeed[top] ?? 0)) return top;
  return null;
}

/** Sample of the lowest engine speed where a gear change leads into the rise; null where none does. */
function shiftBefore(signals: RiseSignals, rise: Rise): number | null {
  const { engineSpeed, time } = signals;
  const a = indexAt(time, (time[rise.from] ?? 0) - 0.6, rise.segment.from, rise.segment.to);
  const b = indexAt(time, (time[rise.from] ?? 0) + 0.2, a, rise.segment.to);
  let low = b;
  for (let i = b; i >= a; i--) if ((engineSpeed[i] ?? 0) < (engineSpeed[low] ?? 0)) low = i;
  const c = indexAt(time, (time[low] ?? 0) - 0.5, rise.segment.from, low);
  for (let i = c; i < low; i++) if ((engineSpeed[i] ?? 0) > 1.08 * (engineSpeed[low] ?? 0)) return low;
  return null;
}
