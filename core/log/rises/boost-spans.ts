import { standardPressure } from '../boost-of.ts';
import { withoutClosings } from '../pedal/plate-closings.ts';
import type { EndedSpan, Span } from '../span.ts';
import { indexAt } from '../speeds/speed-ratio.ts';
import type { FootFit } from './foot-error.ts';
import { carsInQuestion, type MomentTable, momentsOf, momentTable } from './foot-fit.ts';
import { atFullPressure } from './full-pressure.ts';

/** With the plate wide open the manifold is no further than this below the air around it [Pa] (common practice). */
export const wideOpen = -8e3;
/** Behind a plate that a foot let shut the pressure falls further below the air around it [Pa] (common practice). */
const shutPlate = -45e3;
/** A signal that hardly ever shows this vacuum is measured before the plate and tells nothing of it [Pa]. */
const vacuum = -20e3;
/** A vacuum this near its lowest has settled [Pa]. */
const settled = 5e3;
/** An open plate leaves the air around it, but for its losses and a barometer that is not known [Pa]. */
const openPlate = { level: -1e3, within: 3e3 };
/**
 * Plate and air follow the foot by so much more than the model of both knows [s], on the middle of five generators of
 * drives.
 */
const untoldLag_s = 0.03;
/** What the model of foot, plate and manifold leaves over, on the middle of noisy and quiet sensors [Pa]. */
const misfit = 1.5e3;
/** So many, and a sort of car that is out of the question by then stays so. */
const pullsThatTellTheCar = 8;
/** A charger that made this much within so long still spins [Pa gauge, s]. */
const spun = { boost: 1e4, within_s: 2 };
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
): EndedSpan[] | null {
  let seen = 0;
  let low = 0;
  for (let i = 0; i < boost.length; i++) {
    if (Number.isNaN(boost[i] ?? Number.NaN)) continue;
    seen++;
    if ((boost[i] ?? 0) < vacuum) low++;
  }
  if (low < 0.02 * seen || low < 3) return null;
  const found: (EndedSpan & { segment: Span })[] = [];
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
      const shut = end === segment.to ? { to: end } : shutMoment(boost, time, segment, i, end);
      if (shut.to - i > 2) found.push({ from: i, ...shut, segment });
      i = end;
    }
  }
  const whole = withoutClosings(found, { values: boost, least: shutPlate }, engineSpeed, { time, segments });
  return withStarts(atFullPressure(whole, boost, engineSpeed, time), boost, time);
}

/** Moves each start from where the vacuum is gone to where the foot met its stop. */
function withStarts(
  spans: readonly (EndedSpan & { readonly segment: Span })[],
  boost: Float64Array,
  time: Float64Array,
): EndedSpan[] {
  const tables: (MomentTable | null)[] = [];
  // A long log's first pulls tell the car; the rest need not try every other.
  let cars: readonly number[] | null = null;
  for (const { from, segment } of spans) {
    if (from === segment.from) {
      tables.push(null);
      continue;
    }
    const atmospheric = crossing(boost, time, from, wideOpen);
    const fit: FootFit = {
      way: 'down',
      as: 'pressure',
      from_s: atmospheric - 0.3,
      to_s: atmospheric + 0.04,
      before_s: atmospheric - 0.3 - quietSince(boost, time, segment, from, atmospheric - 0.7),
      after_s: 0.6,
      noise: misfit,
      ...(spunBefore(boost, time, segment, from) ? {} : { open: openPlate }),
    };
    tables.push(momentTable(boost, time, segment, fit, cars));
    if (tables.length === pullsThatTellTheCar) cars = carsInQuestion(tables);
  }
  const moments = momentsOf(tables);
  return spans.flatMap(({ from, to, endAt_s }, i) => {
    const moment = moments[i];
    if (!moment) return to - from > 2 ? [{ from, to, endAt_s }] : [];
    const startAt_s = moment.at_s - untoldLag_s;
    const start = indexAt(time, startAt_s, from, to);
    const startWithin_s = withCharger(moment.within_s, startAt_s - crossing(boost, time, from, wideOpen));
    return to - start > 2 ? [{ from: start, to, startAt_s, endAt_s, startWithin_s }] : [];
  });
}

/**
 * Half width [s] of where the foot may have met its stop, if the fit puts it so long after the vacuum was gone: a
 * charger that comes up at once looks like a plate that is still opening, and then the foot was down by that moment.
 */
function withCharger(within_s: number, afterVacuum_s: number): number {
  return Math.hypot(within_s, Math.max(0, afterVacuum_s));
}

/** Time between two samples at which the pressure passes a level upwards. */
function crossing(boost: Float64Array, time: Float64Array, after: number, level: number): number {
  const a = boost[after - 1] ?? level;
  const b = boost[after] ?? level;
  const share = b > a ? Math.min(1, Math.max(0, (level - a) / (b - a))) : 1;
  const before = time[after - 1] ?? time[after] ?? 0;
  return before + share * ((time[after] ?? 0) - before);
}

/** A fall shows so long behind the first move of the foot [s]: the manifold empties behind the plate (common practice). */
const fallShows_s = 0.05;
/** So much longer, and a usual lift has emptied it [s] (common practice). */
const fallLasts_s = 0.2;

/**
 * When the plate begins to shut: back from the vacuum to where the fall began. Between the last row before it and the
 * first within it the part of the fall that the latter shows tells how long before it the foot left.
 *
 * @param end  first sample below the pressure of an open plate
 */
function shutMoment(
  boost: Float64Array,
  time: Float64Array,
  segment: Span,
  from: number,
  end: number,
): { to: number; endAt_s: number } {
  let i = end;
  while (i > from + 1) {
    const here = boost[i] ?? wideOpen;
    const before = boost[i - 1] ?? here;
    const seconds = Math.max(1e-3, (time[i] ?? 0) - (time[i - 1] ?? 0));
    // Slower than 40 % of the pressure per second is a turbine running down, not a plate shutting.
    if ((before - here) / (before + standardPressure) < 0.4 * seconds) break;
    i--;
  }
  const high = boost[i] ?? wideOpen;
  const [before_s, after_s] = [time[i] ?? 0, time[i + 1] ?? 0];
  let low = boost[i + 1] ?? high;
  for (let k = i + 2; k < segment.to && (time[k] ?? 0) < after_s + 2 * fallLasts_s; k++)
    low = Math.min(low, boost[k] ?? low);
  const fallen = low < high ? Math.min(1, Math.max(0, (high - (boost[i + 1] ?? high)) / (high - low))) : 0;
  const endAt_s = Math.max(before_s - fallShows_s, after_s - fallShows_s - fallLasts_s * fallen);
  return { to: endAt_s < before_s ? i : i + 1, endAt_s };
}

/** Whether the charger was still spinning from a pull just before: the pressure then jumps with the plate. */
function spunBefore(boost: Float64Array, time: Float64Array, segment: Span, at: number): boolean {
  for (let i = at - 1; i >= segment.from && (time[i] ?? 0) > (time[at] ?? 0) - spun.within_s; i--)
    if ((boost[i] ?? 0) > spun.boost) return true;
  return false;
}

/** From when on the vacuum stood, after `earliest`: the plate that shut just before belongs to another move. */
function quietSince(
  boost: Float64Array,
  time: Float64Array,
  segment: Span,
  at: number,
  earliest: number,
): number {
  let low = at;
  for (let i = at - 1; i >= segment.from && (time[i] ?? 0) >= earliest; i--) {
    const v = boost[i] ?? Number.NaN;
    if (v >= wideOpen) {
      const level = (boost[low] ?? 0) + settled;
      let first = i + 1;
      while (first < low && !((boost[first] ?? 0) <= level)) first++;
      return time[first] ?? earliest;
    }
    if (v < (boost[low] ?? 0)) low = i;
  }
  return earliest;
}
