import type { SlopeCurve } from './slope-estimate.ts';

/** A smooth signal, worked out at even instants and read between them by cubics. */
export type CurveTable<C extends SlopeCurve = SlopeCurve> = {
  readonly time: Float64Array;
  readonly curve: C;
  /** Value at an instant inside the table; outside it the end's own line goes on. */
  readonly valueAt: (time: number) => number;
};

/**
 * Tabulates a smooth signal between two instants. The kernel is several times wider than the step, so that cubics
 * through value and slope stray from it by less than its noise.
 *
 * @param step  [s]
 */
export function curveTable<C extends SlopeCurve>(
  along: (times: Float64Array) => C,
  from: number,
  to: number,
  step: number,
): CurveTable<C> {
  // A pull lasts seconds; what lasts hours is none, and must not fill the memory.
  const count = Math.min(500, Math.max(8, Math.ceil((to - from) / step) + 1));
  const time = new Float64Array(count);
  for (let i = 0; i < count; i++) time[i] = from + ((to - from) * i) / (count - 1);
  const curve = along(time);
  const { value, slope } = curve;
  const dt = (to - from) / (count - 1);
  const valueAt = (t: number): number => {
    const i = Math.min(count - 2, Math.max(0, Math.floor((t - from) / dt)));
    const a = value[i] as number;
    const b = value[i + 1] as number;
    const aSlope = slope[i] as number;
    const bSlope = slope[i + 1] as number;
    const u = (t - (time[i] as number)) / dt;
    if (u < 0) return a + u * dt * aSlope;
    if (u > 1) return b + (u - 1) * dt * bSlope;
    const u2 = u * u;
    const u3 = u2 * u;
    return (
      a * (2 * u3 - 3 * u2 + 1) +
      dt * aSlope * (u3 - 2 * u2 + u) +
      b * (3 * u2 - 2 * u3) +
      dt * bSlope * (u3 - u2)
    );
  };
  return { time, curve, valueAt };
}
