import type { Span } from '../span.ts';
import {
  type EffortCurve,
  effortCurve,
  type ForceSignals,
  fewestInBin,
  middleOf,
  mostMeasures,
} from './full-force.ts';

/** A rise that ends this near the highest of the log was driven out, in whatever gear (common practice). */
const drivenOut = 0.78;
/** Of the highest of the log counts what climbs so far and lasts so long: less may be a blip. */
const highest = { climb: 1.35, lasts_s: 1.2 } as const;
/** Less is a moment. */
const shortest = { climb: 1.08, lasts_s: 1 } as const;
/** Pulls in one gear repeat each other within this, in the upper half. */
const same = { least: 0.9, most: 1.1, bins: 3 } as const;
/** Below this a car moves off or creeps; no pull begins there [rad/s], 1,300 rpm (common practice). */
const slowestStart = 136;

/**
 * Which rises are at full throttle where engine speed is all that is logged. The slope alone does not tell it: half
 * throttle in first gear is steeper than a pull in fourth. Pulls are driven out to high engine speeds, where nobody goes
 * on part throttle; what ends sooner is one where it repeats a pull that was.
 *
 * @param slope  of engine speed [rad/s2], one per sample
 */
export function highInSpeed(rises: readonly Span[], signals: ForceSignals, slope: Float64Array): boolean[] {
  const { engineSpeed, time } = signals;
  const ends = rises.map(({ from, to }) => {
    const [first, last] = [engineSpeed[from] ?? 0, engineSpeed[to - 1] ?? 0];
    return { first, last, climb: last / first, lasts_s: (time[to - 1] ?? 0) - (time[from] ?? 0) };
  });
  const top = ends
    .filter(({ climb, lasts_s }) => climb >= highest.climb && lasts_s >= highest.lasts_s)
    .reduce((most, { last }) => Math.max(most, last), 0);
  const isPossible = ends.map(
    ({ first, climb, lasts_s }) =>
      first >= slowestStart && climb >= shortest.climb && lasts_s >= shortest.lasts_s,
  );
  const curves = rises.map((rise) => effortCurve({ ...signals, ratio: null }, slope, rise));
  const isDrivenOut = ends.map(({ last }, i) => isPossible[i] === true && last >= drivenOut * top);
  const pulls = curves.filter((_, i) => isDrivenOut[i]).slice(0, mostMeasures);
  return curves.map(
    (curve, i) =>
      isDrivenOut[i] === true || (isPossible[i] === true && pulls.some((pull) => repeats(curve, pull))),
  );
}

/** Whether a rise is as steep as another at the same engine speeds, on the middle of the upper half. */
function repeats(curve: EffortCurve, other: EffortCurve): boolean {
  const shares: number[] = [];
  for (const [bin, { effort, count }] of curve) {
    const there = other.get(bin);
    if (count >= fewestInBin && there && there.count >= fewestInBin) shares.push(effort / there.effort);
  }
  if (shares.length < same.bins) return false;
  const share = middleOf(shares.slice(shares.length >> 1));
  return share >= same.least && share <= same.most;
}
