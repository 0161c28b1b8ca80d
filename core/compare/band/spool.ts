import type { PullEvidence } from '../evidence/pull-evidence.ts';
import { median } from '../statistics/index.ts';

/** Boost under this is not a turbine's plateau [Pa] (common practice). */
const leastBoost = 20_000;
/** Share of the plateau from which boost counts as up (common practice). */
const upShare = 0.85;
/** An engine whose boost is still rising past this share of the pull has no plateau: that is how it is built. */
const latest = 0.5;
const standardAtmosphere = 101_325;

/**
 * Engine speed from which boost stays up: where the pedal went down the turbine is still catching up, and how
 * far depends on the moment of the pedal more than on the setup. Null where no pressure is logged, the engine is
 * not boosted, or boost rises over half of the pull.
 *
 * @param band  over which the pull's power can be trusted [rad/s]
 * @returns     [rad/s], inside the band
 *
 * Source: common practice: plateau is the median of the upper half, up is 85 % of it.
 */
export function spooledFrom(pull: PullEvidence, band: readonly [number, number]): number | null {
  const { boost, manifoldPressure } = pull.curves;
  const pressure = boost ?? manifoldPressure;
  if (!pressure) return null;
  const zero = boost ? 0 : standardAtmosphere;
  const speed = pull.power.engineSpeed_rad_s;
  const middle = band[0] + latest * (band[1] - band[0]);
  const upper: number[] = [];
  for (let i = 0; i < speed.length; i++) {
    const value = (pressure[i] as number) - zero;
    if ((speed[i] as number) >= middle && (speed[i] as number) <= band[1] && Number.isFinite(value)) {
      upper.push(value);
    }
  }
  const plateau = median(upper);
  if (!(plateau > leastBoost)) return null;
  let from: number | null = null;
  for (let i = speed.length - 1; i >= 0; i--) {
    const at = speed[i] as number;
    if (at > middle) continue;
    if (at < band[0] || (pressure[i] as number) - zero < upShare * plateau) break;
    if (Number.isFinite(pressure[i])) from = at;
  }
  return from;
}
