import type { EntryPulls } from '../judge-input.ts';
import { choosePulls } from '../selection/choose-pulls.ts';
import { sharedBand, spooledBand } from './common-band.ts';

/**
 * Engine speeds that the pulls of several sessions share, from where boost is up in each of them [rad/s]. A level
 * of each over this band is a mean over the same engine speeds. Null where they share less than the narrowest band.
 */
export function bandOfDays(days: readonly (readonly EntryPulls[])[]): readonly [number, number] | null {
  const chosen = days
    .flat()
    // One side alone: what counts of an entry does not depend on what it is compared with.
    .flatMap((entry) => choosePulls({ before: entry.pulls, after: [] }).before);
  if (chosen.length === 0) return null;
  const common = sharedBand(chosen.map((c) => c.band));
  return (
    common &&
    spooledBand(
      common,
      chosen.map((c) => c.pull),
    )
  );
}
