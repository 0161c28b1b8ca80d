import type { SlopeEstimator, SlopePoint } from './slope-estimate.ts';

/** A smooth signal, worked out at even instants and read between them by cubics. */
export type CurveTable = {
  readonly time: Float64Array;
  readonly points: readonly SlopePoint[];
  /** Value at an instant inside the table; outside it the end's own line goes on. */
  readonly valueAt: (time: number) => number;
};

/**
 * Tabulates an estimator between two instants. The kernel is several times wider than the step, so that cubics
 * through value and slope stray from it by less than its noise.
 *
 * @param step  [s]
 */
export function curveTable(estimator: SlopeEstimator, from: number, to: number, step: number): CurveTable {
  // A pull lasts seconds; what lasts hours is none, and must not fill the memory.
  const count = Math.min(500, Math.max(8, Math.ceil((to - from) / step) + 1));
  const time = Float64Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
  const points = Array.from(time, (t) => estimator.at(t));
  const dt = (to - from) / (count - 1);
  const valueAt = (t: number): number => {
    const i = Math.min(count - 2, Math.max(0, Math.floor((t - from) / dt)));
    const a = points[i] as SlopePoint;
    const b = points[i + 1] as SlopePoint;
    const u = (t - (time[i] as number)) / dt;
    if (u < 0) return a.value + u * dt * a.slope;
    if (u > 1) return b.value + (u - 1) * dt * b.slope;
    const u2 = u * u;
    const u3 = u2 * u;
    return (
      a.value * (2 * u3 - 3 * u2 + 1) +
      dt * a.slope * (u3 - 2 * u2 + u) +
      b.value * (3 * u2 - 2 * u3) +
      dt * b.slope * (u3 - u2)
    );
  };
  return { time, points, valueAt };
}
