import { standardPressure } from '../boost-of.ts';
import { medianOf } from '../median.ts';
import type { Span } from '../span.ts';

/** Pressure of a pull against the most that the file shows at the same engine speed, both absolute. */
const fullShare = 0.85;
/**
 * Once the charger has spun up pressure tells part throttle from full more closely: after so long [s], where it has not
 * risen by this share over the last third. Before, it hangs on the engine speed that the pull began at.
 */
const spunUp_s = 3;
const stillSpinsUp = 0.02;
const fullShareSpunUp = 0.93;
/**
 * Behind an open plate the pressure of a charged engine does not fall while engine speed climbs, before there is boost:
 * where it does by so much, without boost in a file that shows some, the plate stands part of the way [Pa].
 */
const eased = { fall: 1.5e3, boost: 5e3, charged: 3e4 } as const;
/**
 * What ends at low engine speed after a time in which a charger spins up, with hardly any of the boost that the file
 * shows, was part throttle (common practice); a pull from low engine speeds goes on.
 */
const low = { share: 0.3, after_s: 2, until_s: 6, ends: 0.5 } as const;
/** Pressures are compared in bins of so many rad/s. */
const binWidth = 50;

/**
 * Spans at full throttle among those whose manifold is near the air's pressure: part throttle lifts the vacuum too.
 * Each is held against the most pressure of the others at its engine speeds.
 *
 * @param boost        [Pa gauge]
 * @param engineSpeed  [rad/s]
 */
export function atFullPressure<T extends Span>(
  spans: readonly T[],
  boost: Float64Array,
  engineSpeed: Float64Array,
  time: Float64Array,
): T[] {
  const most = new Map<number, number>();
  const binOf = (i: number) => Math.round((engineSpeed[i] ?? 0) / binWidth);
  const pressureAt = (i: number) => (boost[i] ?? Number.NaN) + standardPressure;
  for (const { from, to } of spans)
    for (let i = from; i < to; i++)
      if (pressureAt(i) > (most.get(binOf(i)) ?? 0)) most.set(binOf(i), pressureAt(i));
  const isCharged = Math.max(...most.values()) - standardPressure > eased.charged;
  const isPartly = isCharged ? partThrottle(spans, boost, engineSpeed, time) : () => false;
  return spans.filter((span) => {
    if (isPartly(span)) return false;
    const { from, to } = span;
    const shares: number[] = [];
    const isSpunUp = hasSpunUp(boost, time, span);
    // The first half may still be spooling up.
    for (let i = isSpunUp ? lastThird(span) : (from + to) >> 1; i < to; i++)
      if (!Number.isNaN(pressureAt(i))) shares.push(pressureAt(i) / (most.get(binOf(i)) ?? pressureAt(i)));
    shares.sort((a, b) => a - b);
    return (shares[shares.length >> 1] ?? 0) >= (isSpunUp ? fullShareSpunUp : fullShare);
  });
}

/** Tells part throttle by how the boost of a charged engine goes on within a span. */
function partThrottle(
  spans: readonly Span[],
  boost: Float64Array,
  engineSpeed: Float64Array,
  time: Float64Array,
): (span: Span) => boolean {
  let highest = 0;
  for (const { from, to } of spans)
    for (let i = from; i < to; i++) if ((boost[i] ?? 0) > highest) highest = boost[i] ?? 0;
  const endOf = ({ to }: Span) => medianOf(engineSpeed, to - 3, to);
  const top = spans.reduce((speed, span) => Math.max(speed, endOf(span)), 0);
  return (span) => {
    const { from, to } = span;
    const late = medianOf(boost, lastThird(span), to);
    const early = medianOf(boost, from, from + Math.ceil((to - from) / 4));
    if (late < eased.boost && late < early - eased.fall) return true;
    const lasts_s = (time[to - 1] ?? 0) - (time[from] ?? 0);
    return (
      late < low.share * highest &&
      endOf(span) < low.ends * top &&
      lasts_s > low.after_s &&
      lasts_s < low.until_s
    );
  };
}

const lastThird = ({ from, to }: Span) => Math.floor((from + 2 * to) / 3);

/** Whether a span lasts long enough for the charger to spin up, and its pressure has come to rest. */
function hasSpunUp(boost: Float64Array, time: Float64Array, span: Span): boolean {
  const { from, to } = span;
  if (!((time[to - 1] ?? 0) - (time[from] ?? 0) > spunUp_s)) return false;
  const third = lastThird(span);
  const sixth = (third + to) >> 1;
  const rise = medianOf(boost, sixth, to) - medianOf(boost, third, sixth);
  return rise < (stillSpinsUp / 2) * (medianOf(boost, third, to) + standardPressure);
}
