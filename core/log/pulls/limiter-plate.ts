import type { Span } from '../span.ts';
import { medianOfThree } from '../speeds/speed-ratio.ts';

/** The limiter stands where the highest engine speed of the log is, but for noise. */
const nearHighest = 0.98;
/** It holds engine speed where torque was first taken back, but for what the engine runs on (common practice). */
const runsOn = 0.015;

/**
 * Whether torque that was taken back under a floored pedal was taken by the limiter: many an engine control shuts
 * the plate or retards the spark there instead of cutting fuel. It does so at the highest engine speed of the log, and
 * engine speed climbs no further in the pull; torque that traction or a gearbox asked for comes back, and it does.
 *
 * @param engineSpeed  [rad/s]
 * @param at           first sample at which torque is short
 */
export function isLimiterAt(engineSpeed: Float64Array, pull: Span, at: number): boolean {
  const level = medianOfThree(engineSpeed, at);
  for (let i = at + 1; i < pull.to - 1; i++)
    if (medianOfThree(engineSpeed, i) > (1 + runsOn) * level) return false;
  for (let i = 1; i < engineSpeed.length - 1; i++)
    if (nearHighest * medianOfThree(engineSpeed, i) > level) return false;
  return true;
}
