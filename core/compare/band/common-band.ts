import type { PullEvidence } from '../evidence/pull-evidence.ts';
import { spooledFrom } from './spool.ts';

/**
 * The engine speeds over which a pull's power can be trusted: half a smoothing width inside its first and last
 * moment, because there the kernel has data on both sides, and where it starts the turbine is still catching up
 * with the pedal. Null for a pull without power.
 */
export function trustedBand(pull: PullEvidence): readonly [number, number] | null {
  const { engineSpeed_rad_s: speed, wheelPower, time, bandwidth } = pull.power;
  let first = 0;
  let last = speed.length - 1;
  while (first <= last && !Number.isFinite(wheelPower[first] as number)) first++;
  while (last >= first && !Number.isFinite(wheelPower[last] as number)) last--;
  if (last - first < 4) return null;
  const from = (time[first] as number) + bandwidth / 2;
  const to = (time[last] as number) - bandwidth / 2;
  let low = first;
  let high = last;
  while (low < last && (time[low] as number) < from) low++;
  while (high > low && (time[high] as number) > to) high--;
  return high - low < 3 ? null : [speed[low] as number, speed[high] as number];
}

/** Narrowest band that still says something of an engine: 500 rpm (common practice). */
export const narrowestBand_rad_s = (500 * Math.PI) / 30;

/** What all of these bands share; null where that is narrower than the narrowest. */
export function sharedBand(bands: readonly (readonly [number, number])[]): readonly [number, number] | null {
  let low = Number.NEGATIVE_INFINITY;
  let high = Number.POSITIVE_INFINITY;
  for (const band of bands) {
    low = Math.max(low, band[0]);
    high = Math.min(high, band[1]);
  }
  return high - low >= narrowestBand_rad_s ? [low, high] : null;
}

/**
 * The default band: what all pulls share, from where boost is up in each of them. A pull without a plateau or
 * without pressure moves nothing.
 */
export function spooledBand(
  common: readonly [number, number],
  pulls: readonly PullEvidence[],
): readonly [number, number] {
  const low = pulls.reduce((from, pull) => Math.max(from, spooledFrom(pull, common) ?? from), common[0]);
  return common[1] - low >= narrowestBand_rad_s ? [low, common[1]] : common;
}
