import { type Arrival, fluidArrival, lineVolume } from '../delivery/index.ts';
import type { Explanation } from '../units/index.ts';
import { deliveredAt, type SprayContext } from './feed-curve.ts';
import { practice } from './practice.ts';
import type { Setup } from './setup.ts';
import type { SprayPoints } from './strategy-points.ts';

/** Line that stands empty until the spray starts [m^3]. */
export function emptyVolume(setup: Setup): number {
  const { line, checkValve_kPa } = setup.fluidSystem;
  if (line.bore_mm === null) return 0;
  // A check valve at the nozzle keeps the line full; without one it drains into the engine or back.
  const length = line.empty_m ?? (checkValve_kPa === null ? (line.length_m ?? 0) : 0);
  return lineVolume(line.bore_mm / 1e3, length);
}

/** When fluid first leaves the nozzle after a start point, boost climbing as on the pull. */
export function arrivalOf(context: SprayContext, points: SprayPoints): Arrival | null {
  const { path, setup } = context;
  const boost: number[] = [];
  const flow: number[] = [];
  for (let i = 0; i <= 8; i++) {
    const b = points.start + ((path.peakBoost - points.start) * i) / 8;
    boost.push(b);
    flow.push(deliveredAt(context, points, path.peakSpeed_rad_s, b));
  }
  return fluidArrival({
    volume: emptyVolume(setup),
    curve: { boost, flow },
    start: points.start,
    peak: path.peakBoost,
    rise: path.boostRise,
  });
}

/**
 * Start moved down until fluid is at the nozzle before the boost at which this engine knocks without it.
 *
 * @returns  the start, and the arrival it leads to; the lowest tried start where even that comes too late
 */
export function beforeKnock(
  context: SprayContext,
  points: SprayPoints,
  limit: number,
): { points: SprayPoints; arrival: Arrival | null } {
  const latest = limit - practice.knockMargin;
  const inTime = (p: SprayPoints) => {
    const arrival = arrivalOf(context, p);
    return { arrival, ok: arrival !== null && arrival.boost <= latest };
  };
  const now = inTime(points);
  if (now.ok) return { points, arrival: now.arrival };
  const lowest = 0.05 * context.path.peakBoost;
  let [low, high] = [Math.min(lowest, points.start), Math.min(points.start, latest)];
  for (let i = 0; i < 12 && high - low > 200; i++) {
    const middle = (low + high) / 2;
    if (inTime({ ...points, start: middle }).ok) low = middle;
    else high = middle;
  }
  const moved = { ...points, start: low };
  return { points: moved, arrival: inTime(moved).arrival };
}

/** Where the delay of the fluid comes from. */
export function explainArrival(context: SprayContext, points: SprayPoints, delay: number): Explanation {
  return {
    id: 'injection/arrival',
    formula: 'integral of q(boost(t)) dt = V, boost(t) = start + rise t',
    tex: String.raw`\int_0^{t} q(p(\tau))\,\mathrm{d}\tau = V,\quad p(\tau)=p_\mathrm{start}+\dot p\,\tau`,
    inputs: [
      { symbol: 'V', value: emptyVolume(context.setup), kind: 'smallVolume' },
      { symbol: 'start', value: points.start, kind: 'boost' },
      { symbol: 'rise in 1 s', value: context.path.boostRise, kind: 'boost', isDifference: true },
      { symbol: 't', value: delay, kind: 'time' },
    ],
    source: 'continuity, rigid line; a soft hose adds some tenths of a second (common practice)',
    validRange: [],
  };
}
