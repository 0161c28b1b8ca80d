import { medianOf } from '../median.ts';
import type { EndedSpan, Span } from '../span.ts';
import { indexAt, medianOfThree } from '../speeds/speed-ratio.ts';
import { partedByFoot } from './foot-moves.ts';
import { atFullForce, effortCurve, middleEffort, sharesOfStrongest } from './full-force.ts';
import { highInSpeed } from './high-in-speed.ts';
import type { Rise } from './rise.ts';
import { withEnds } from './rise-ends.ts';
import { slopeNoise, slopeOf } from './steady-rise.ts';

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
/** A rise has begun where it is this share of its own usual slope. */
const startOfRise = 0.35;
const shortest_s = 0.8;
const leastRise = 1.09;
/** Part throttle makes less than this share of the most torque seen at the same engine speed. */
const fullShare = 0.75;
const fullBoostShare = 0.7;

/**
 * Spans of sustained acceleration, for a log with neither pedal nor throttle. The ends are where the slope of
 * engine speed breaks. Gentle accelerations are told from full throttle by boost where it is logged, else by the
 * torque that the acceleration needs, each beside the strongest of the file.
 *
 * Valid: both ends within 0.15 s of the pedal's in three pulls of four, within 0.3 s in nine of ten; little more
 *        can be had (tests/bench/foot-bound.ts), and such an end says how far it may be off. Part
 *        throttle that makes nine tenths of the torque passes for full.
 */
export function risingSpans(signals: RiseSignals): EndedSpan[] {
  const { engineSpeed, time, segments } = signals;
  const slope = slopeOf(engineSpeed, time, segments);
  const rises: Rise[] = [];
  const noise = slopeNoise(engineSpeed, time);
  for (const segment of segments) rises.push(...risesIn(signals, slope, noise, segment));
  const strongest = strengthOf(signals, slope, rises);
  const highest = rises.reduce((top, r) => Math.max(top, medianOf(engineSpeed, r.to - 3, r.to)), 0);
  const floored = rises.filter((_, i) => strongest[i]);
  return withEnds(engineSpeed, time, floored, highest).filter((span) => span.to - span.from > 2);
}

function risesIn(signals: RiseSignals, slope: Float64Array, noise: number, segment: Span): Rise[] {
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
    const parted = partedByFoot(slope, noise, time, { from: i, to: end }, segment);
    for (const [k, piece] of withoutSpin(parted, signals, segment).entries()) {
      // Within it, what is steep as a pull is: a slow run-up before it does not count.
      const usual = medianOf(slope, piece.from, piece.to);
      let a = piece.from;
      while (a < piece.to && (slope[a] ?? 0) < startOfRise * usual) a++;
      if (piece.to > a) found.push({ from: a, to: piece.to, segment, isOwnMove: k > 0 });
    }
    i = end;
  }
  return joined(found, signals)
    .filter(({ from, to }) => {
      const rise = (engineSpeed[to - 1] ?? 0) / (engineSpeed[from] ?? 1);
      return (time[to - 1] ?? 0) - (time[from] ?? 0) >= shortest_s && rise >= leastRise;
    })
    .filter((span) => isInGear(span, signals, slope));
}

/** Free of the wheels an engine climbs faster than in any gear [rad/s2], 2,900 rpm per second (common practice). */
const freeRise = 300;
/** Over a pull the ratio of engine to road speed stays within this, slip and noise counted in (common practice). */
const steadyRatio = 0.12;

/**
 * Whether the wheels took part in a rise. A blip in neutral, or a clutch that slips, would pass for the strongest pull
 * of the log and every true one beside it for part throttle.
 */
function isInGear(span: Span, { ratio }: RiseSignals, slope: Float64Array): boolean {
  const third = Math.ceil((span.to - span.from) / 3);
  // A strong car climbs as fast in first gear, its wheels with it; one that stands shows no ratio.
  if (!ratio || Number.isNaN(medianOf(ratio, span.from, span.from + third)))
    return !(medianOf(slope, span.from, span.to) > freeRise);
  const first = medianOf(ratio, span.from, span.from + third);
  const last = medianOf(ratio, span.to - third, span.to);
  return !(Math.abs(last / first - 1) > steadyRatio);
}

/** Engine speed that runs ahead of the road's by this share is spin, no foot (common practice). */
const leastSpin = 0.05;

/** Joins what was parted where wheels began to spin: the road did not feel a foot there. */
function withoutSpin(pieces: readonly Span[], signals: RiseSignals, segment: Span): Span[] {
  const { ratio, time } = signals;
  const kept: Span[] = [];
  for (const piece of pieces) {
    const last = kept.at(-1);
    if (last && ratio && spinsAt(ratio, time, piece.from, segment))
      kept[kept.length - 1] = { from: last.from, to: piece.to };
    else kept.push(piece);
  }
  return kept;
}

function spinsAt(ratio: Float64Array, time: Float64Array, at: number, segment: Span): boolean {
  const t = time[at] ?? 0;
  const index = (s: number) => indexAt(time, s, segment.from, segment.to);
  const usual = medianOf(ratio, index(t - 0.8), index(t - 0.3));
  const to = Math.min(segment.to - 1, index(t + 0.4));
  for (let i = Math.max(segment.from + 1, index(t - 0.2)); i < to; i++)
    if (medianOfThree(ratio, i) > (1 + leastSpin) * usual) return true;
  return false;
}

/** Rises that a moment of spin or of the limiter parts are one; a gear change leads further down. */
function joined(rises: readonly Rise[], signals: RiseSignals): Rise[] {
  const { engineSpeed, time } = signals;
  const found: Rise[] = [];
  for (const rise of rises) {
    const last = found.at(-1);
    const gap = last ? (time[rise.from] ?? 0) - (time[last.to - 1] ?? 0) : Number.POSITIVE_INFINITY;
    const isOne =
      last &&
      !rise.isOwnMove &&
      gap < 0.4 &&
      (engineSpeed[rise.from] ?? 0) > 0.9 * (engineSpeed[last.to - 1] ?? 0);
    if (isOne && last.to - last.from > 2) found[found.length - 1] = { ...last, to: rise.to };
    else found.push(rise);
  }
  return found;
}

/** Which rises are at full throttle. */
function strengthOf(signals: RiseSignals, slope: Float64Array, rises: readonly Rise[]): boolean[] {
  const { boost, ratio } = signals;
  if (boost) {
    const peaks = rises.map((r) => {
      const late = boost.subarray((r.from + r.to) >> 1, r.to);
      return medianOf(late, 0, late.length);
    });
    const most = peaks.reduce((a, b) => Math.max(a, b), 0);
    // An engine without boost in the log, or a spool too late to tell: the acceleration decides below.
    if (most > 2e4) return peaks.map((p) => p >= fullBoostShare * most);
  }
  if (!ratio) return highInSpeed(rises, signals, slope);
  const curves = rises.map((r) => effortCurve(signals, slope, r));
  const shares = sharesOfStrongest(curves);
  const levels = curves.map(middleEffort);
  const highest = levels.reduce((a, b) => Math.max(a, b), 0);
  const isFull = atFullForce(rises, signals, slope);
  return isFull.map((full, i) => full && (shares[i] ?? 0) >= fullShare && (levels[i] ?? 0) >= 0.5 * highest);
}
