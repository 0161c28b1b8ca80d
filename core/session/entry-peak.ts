import type { EntryPulls } from '../compare/index.ts';

/** Highest mean wheel power of an entry and where it stands. */
export type EntryPeak = { readonly wheelPower: number; readonly engineSpeed_rad_s: number };

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
