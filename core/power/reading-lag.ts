import { type Channel, type Log, median } from '../log/index.ts';
import { numbersWithin } from './numbers-within.ts';
import type { PullWindow } from './pull-window.ts';

/** An engine whose speed has fallen by this has stopped driving: more than speeds scatter by (common practice). */
const fallen = 0.005;
/** Within this of its highest it has not turned yet: as much as speeds scatter by (common practice). */
const atTop = 0.001;
/** A lift and a row or two take no longer (common practice) [s]. */
const usual_s = 0.1;
/** The lift behind a pull is looked for so far [s]. */
const behind_s = 3;

/**
 * How late a dyno's reading is, as the lift behind the pull shows: engine speed falls once the engine drives no more,
 * and a reading that then still holds half of its level is smoothed or comes late.
 *
 *   lag = t(reading under half its level) - t(engine speed last at its highest), once it has fallen by 0.5 %
 *
 * @param reading  power or torque, one per sample
 * @param engine   engine speed, one per sample
 * @returns        [s]; 0 where it is on time, or nothing behind the pull tells
 * Source: a free engine slows only without torque, Newton's second law.
 * Check:  a filter of 0.3 s falls to a half in 0.21 s.
 */
export function readingLag(log: Log, { from, to }: PullWindow, reading: Channel, engine: Channel): number {
  const quarter = Math.max(1, (to - from) >> 2);
  const level = median(numbersWithin(reading.values, to - quarter, to));
  const segment = log.segments.find((s) => s.from <= from && from < s.to);
  const end = segment?.to ?? to;
  const at = (i: number) => log.time[i] as number;
  let top = Math.max(from, to - quarter);
  let turned = at(top);
  let hasFallen = false;
  for (let i = top + 1; i < end && at(i) - at(to - 1) < behind_s; i++) {
    const w = engine.values[i] as number;
    const highest = engine.values[top] as number;
    if (w > highest || !Number.isFinite(highest)) top = i;
    if (!hasFallen && w >= (1 - atTop) * highest) turned = at(i);
    if (w < (1 - fallen) * highest) hasFallen = true;
    if ((reading.values[i] as number) >= level / 2) continue;
    const lag = at(i) - turned;
    // A reading that falls first, as with a foot that lifts slowly, is on time.
    return hasFallen && lag > usual_s ? lag : 0;
  }
  return 0;
}
