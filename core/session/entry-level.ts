import { type EntryPulls, tQuantile } from '../compare/index.ts';

/** Mean wheel power of an entry over a band [W], with half its own 95 % interval where two pulls or more tell it. */
export type EntryLevel = { readonly mean: number; readonly half: number | null };

/** Highest mean wheel power of an entry and where it stands. */
export type EntryPeak = { readonly wheelPower: number; readonly engineSpeed_rad_s: number };

type Curve = { readonly engineSpeed_rad_s: Float64Array; readonly wheelPower: Float64Array };

function bandMean(curve: Curve, band: readonly [number, number]): number | null {
  let sum = 0;
  let count = 0;
  for (const [i, speed] of curve.engineSpeed_rad_s.entries()) {
    const power = curve.wheelPower[i] as number;
    if (speed < band[0] || speed > band[1] || !Number.isFinite(power)) continue;
    sum += power;
    count++;
  }
  return count === 0 ? null : sum / count;
}

/**
 * The level of one entry by itself, for the ledger. It is no comparison: what two entries differ by is the
 * judge's to say, with the session's repeatability.
 *
 * Check: band means 100, 102, 104 kW give 102 ± 4.97 kW (t 0.975, 2 degrees of freedom, is 4.303).
 */
export function entryLevel(pulls: EntryPulls['pulls'], band: readonly [number, number]): EntryLevel | null {
  const means = pulls.flatMap((p) => bandMean(p.power, band) ?? []);
  if (means.length === 0) return null;
  const mean = means.reduce((a, b) => a + b, 0) / means.length;
  if (means.length === 1) return { mean, half: null };
  const variance = means.reduce((a, b) => a + (b - mean) ** 2, 0) / (means.length - 1);
  const t = tQuantile(0.975, means.length - 1);
  return { mean, half: t * Math.sqrt(variance / means.length) };
}

/** The peak of the mean of an entry's curves, read where every pull has power; null where none does. */
export function entryPeak(pulls: EntryPulls['pulls']): EntryPeak | null {
  const sums = new Map<number, { sum: number; count: number }>();
  for (const { power } of pulls) {
    for (const [i, speed] of power.engineSpeed_rad_s.entries()) {
      const watts = power.wheelPower[i] as number;
      if (!Number.isFinite(watts)) continue;
      const at = sums.get(speed) ?? { sum: 0, count: 0 };
      sums.set(speed, { sum: at.sum + watts, count: at.count + 1 });
    }
  }
  let peak: EntryPeak | null = null;
  for (const [engineSpeed_rad_s, { sum, count }] of sums) {
    const wheelPower = sum / count;
    if (count === pulls.length && (!peak || wheelPower > peak.wheelPower))
      peak = { wheelPower, engineSpeed_rad_s };
  }
  return peak;
}
