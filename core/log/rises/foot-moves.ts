import type { Span } from '../span.ts';
import { indexAt } from '../speeds/speed-ratio.ts';

/** A change of slope that noise does not make, in standard deviations. */
const clear = 6;
/** Slopes this far either side are compared, just beyond the window that smoothed them [s]. */
const reach_s = 0.27;
/** Below this share of the slope after it, what came before was another foot; a late charger doubles at most. */
const gentle = 0.45;
/** Below this share of the slope before it the foot has lifted. */
const lifted = 0.45;
/** The slope before stood for so long, else it is the foot's own travel [s]. */
const sustained_s = 0.6;
/** The slope after stands for so long, else it was a moment: wheels that slip, a hole in the torque [s]. */
const stands_s = 0.8;

/**
 * Parts a span of rising engine speed where the foot came down or lifted while the car kept gaining speed, and ends
 * it where it lifted for good.
 *
 * @param slope  of engine speed [rad/s2], one per sample, smoothed
 * @param noise  standard deviation of one slope [rad/s2]
 * @param span   where the slope is that of a car that gains speed
 */
export function partedByFoot(
  slope: Float64Array,
  noise: number,
  time: Float64Array,
  span: Span,
  segment: Span,
): Span[] {
  const at = (s: number) => indexAt(time, s, segment.from, segment.to);
  const pieces: Span[] = [];
  let from = span.from;
  let i = span.from;
  while (i < span.to) {
    const t = time[i] ?? 0;
    const before = slope[at(t - reach_s)] ?? 0;
    const after = slope[Math.min(segment.to - 1, at(t + reach_s))] ?? 0;
    const hasRun = t - (time[from] ?? 0) >= sustained_s;
    const later = [at(t + reach_s), Math.min(segment.to - 1, at(t + reach_s + stands_s))] as const;
    const isDown =
      after * gentle > before &&
      stays(slope, at(t - sustained_s), i, (v) => v < 0.6 * after) &&
      stays(slope, ...later, (v) => v > 0.6 * after);
    const isUp =
      after < lifted * before &&
      later[1] <= span.to &&
      stays(slope, ...later, (v) => v < 0.6 * before && v > 0);
    if (hasRun && Math.abs(after - before) > clear * noise && (isDown || isUp)) {
      const cut = sharpest(slope, time, segment, i, isDown ? 1 : -1);
      pieces.push({ from, to: Math.max(from + 1, Math.min(cut, span.to)) });
      from = Math.min(cut, span.to);
      i = Math.max(i + 1, at(Math.max(t, time[cut] ?? t) + reach_s));
    } else i++;
  }
  if (span.to > from) pieces.push({ from, to: span.to });
  return pieces;
}

function stays(slope: Float64Array, from: number, to: number, holds: (v: number) => boolean): boolean {
  for (let i = from; i < to; i++) if (!holds(slope[i] ?? 0)) return false;
  return true;
}

/** Sample of the largest change of slope within the next half second. */
function sharpest(
  slope: Float64Array,
  time: Float64Array,
  segment: Span,
  from: number,
  turn: 1 | -1,
): number {
  const at = (s: number) => Math.min(segment.to - 1, indexAt(time, s, segment.from, segment.to));
  const until = at((time[from] ?? 0) + 0.5);
  let best = from;
  let most = Number.NEGATIVE_INFINITY;
  for (let i = from; i <= until; i++) {
    const t = time[i] ?? 0;
    const change = turn * ((slope[at(t + reach_s)] ?? 0) - (slope[at(t - reach_s)] ?? 0));
    if (change > most) {
      most = change;
      best = i;
    }
  }
  return best;
}
