import { indexAt } from './speed-ratio.ts';
import type { Span } from './time-axis.ts';

/** With the plate wide open the manifold is no further than this below the air around it [Pa] (common practice). */
const wideOpen = -8e3;
/** Where the vacuum's end is timed from [Pa]. */
const deep = -35e3;
/** A signal that hardly ever shows this vacuum is measured before the plate and tells nothing of it [Pa]. */
const vacuum = -20e3;
/** From the end of the vacuum to the stop of the pedal, as a multiple of the time the vacuum took to go. */
const restOfTravel = 1.4;
const longestRest_s = 0.35;
/** Pressure of a pull against the most that the file shows at the same engine speed, both absolute. */
const fullShare = 0.85;
const atmosphere = 101_325;
const binWidth = 50;

/**
 * Spans at full throttle told by manifold pressure alone: from where the vacuum is gone to where the plate shuts.
 *
 * @param boost        manifold pressure above the air around [Pa gauge]
 * @param engineSpeed  [rad/s]
 * @returns            null where the signal does not show the plate, measured before it say
 *
 * Valid: ends within 0.15 s of the pedal's for ramps up to half a second.
 */
export function boostSpans(
  boost: Float64Array,
  engineSpeed: Float64Array,
  time: Float64Array,
  segments: readonly Span[],
): Span[] | null {
  let seen = 0;
  let low = 0;
  for (let i = 0; i < boost.length; i++) {
    if (Number.isNaN(boost[i] ?? Number.NaN)) continue;
    seen++;
    if ((boost[i] ?? 0) < vacuum) low++;
  }
  if (low < 0.02 * seen || low < 3) return null;
  const found: Span[] = [];
  for (const segment of segments) {
    let i = segment.from;
    while (i < segment.to) {
      if (!((boost[i] ?? Number.NaN) >= wideOpen)) {
        i++;
        continue;
      }
      let end = i;
      // One missing sample does not end a span.
      while (
        end < segment.to &&
        ((boost[end] ?? Number.NaN) >= wideOpen || (boost[end + 1] ?? Number.NaN) >= wideOpen)
      )
        end++;
      const from = i === segment.from ? i : indexAt(time, openTime(boost, time, segment, i), i, end);
      const to = end === segment.to ? end : shutIndex(boost, time, i, end);
      if (to - from > 2) found.push({ from, to });
      i = end;
    }
  }
  return atFullPressure(found, boost, engineSpeed);
}

/** Time at which the pedal meets its stop: the rest of its travel at the pace at which the vacuum went. */
function openTime(boost: Float64Array, time: Float64Array, segment: Span, first: number): number {
  const atmospheric = crossing(boost, time, first, wideOpen);
  let k = first - 1;
  while (k > segment.from && (boost[k] ?? 0) > deep) k--;
  const vacuumEnds = crossing(boost, time, k + 1, deep);
  const took = Math.max(0, atmospheric - vacuumEnds);
  return atmospheric + Math.min(longestRest_s, restOfTravel * took);
}

/** Time between two samples at which the pressure passes a level upwards. */
function crossing(boost: Float64Array, time: Float64Array, after: number, level: number): number {
  const a = boost[after - 1] ?? level;
  const b = boost[after] ?? level;
  const share = b > a ? Math.min(1, Math.max(0, (level - a) / (b - a))) : 1;
  const before = time[after - 1] ?? time[after] ?? 0;
  return before + share * ((time[after] ?? 0) - before);
}

/** One past the last sample before the plate shuts: back from the vacuum to where the fall began. */
function shutIndex(boost: Float64Array, time: Float64Array, from: number, end: number): number {
  let i = end;
  while (i > from + 1) {
    const here = boost[i] ?? wideOpen;
    const before = boost[i - 1] ?? here;
    const seconds = Math.max(1e-3, (time[i] ?? 0) - (time[i - 1] ?? 0));
    // Slower than 40 % of the pressure per second is a turbine running down, not a plate shutting.
    if ((before - here) / (before + atmosphere) < 0.4 * seconds) break;
    i--;
  }
  return i;
}

/** Spans whose pressure is near the most seen at their engine speeds: part throttle may lift the vacuum too. */
function atFullPressure(spans: readonly Span[], boost: Float64Array, engineSpeed: Float64Array): Span[] {
  const most = new Map<number, number>();
  const binOf = (i: number) => Math.round((engineSpeed[i] ?? 0) / binWidth);
  for (const { from, to } of spans) {
    for (let i = from; i < to; i++) {
      const p = (boost[i] ?? Number.NaN) + atmosphere;
      if (p > (most.get(binOf(i)) ?? 0)) most.set(binOf(i), p);
    }
  }
  return spans.filter(({ from, to }) => {
    const shares: number[] = [];
    // The first half may still be spooling up.
    for (let i = (from + to) >> 1; i < to; i++) {
      const p = (boost[i] ?? Number.NaN) + atmosphere;
      if (!Number.isNaN(p)) shares.push(p / (most.get(binOf(i)) ?? p));
    }
    shares.sort((a, b) => a - b);
    return (shares[shares.length >> 1] ?? 0) >= fullShare;
  });
}
