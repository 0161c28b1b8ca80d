import { channelOf, type Log } from '../channel.ts';
import { medianOf } from '../median.ts';
import type { Span } from '../span.ts';
import type { PullOptions } from './find-pulls.ts';

/** Slip at full load lets the engine run ahead by about so much (common practice). */
const usualSlip = 0.02;
/** Tyre growth, slip and a speedometer that reads high move the ratio by a few percent (common practice). */
const nearEnough = 0.09;

/**
 * The gear whose ratio lies nearest to what the log shows, null where none is near.
 *
 * @param turns  crank turns per turn of the wheels, gear times final drive
 *
 * Check: ratios 3.3, 2.0, 1.36 and final drive 3.9: 5.40 is third, 1.8 % of slip in it; 6.5 is none.
 */
export function nearestGear(gearRatios: readonly number[], finalDrive: number, turns: number): number | null {
  let best: number | null = null;
  let nearest = nearEnough;
  gearRatios.forEach((ratio, i) => {
    const off = Math.abs(turns / (ratio * finalDrive * (1 + usualSlip)) - 1);
    if (off < nearest) {
      nearest = off;
      best = i + 1;
    }
  });
  return best;
}

/**
 * The gear of a pull: as logged, else from engine speed over vehicle speed and the car's ratios, else as the
 * tuner says; null where nobody knows.
 *
 * @param ratioOf  engine speed over vehicle speed within the pull [rad/m], NaN where no speed is logged; asked for
 *                 where it matters
 */
export function gearOf(log: Log, span: Span, options: PullOptions, ratioOf: () => number): number | null {
  const logged = channelOf(log, 'gear');
  if (logged) {
    // Displays lag behind the box: the later half of a pull counts.
    const gear = medianOf(logged.values, (span.from + span.to) >> 1, span.to);
    if (gear >= 1 && gear <= 12) return Math.round(gear);
  }
  const { gearRatios, finalDrive, rollingRadius_m: radius } = options;
  if (gearRatios && finalDrive && radius) {
    // Nothing is near a ratio that is NaN.
    const best = nearestGear(gearRatios, finalDrive, ratioOf() * radius);
    if (best !== null) return best;
  }
  return options.pullGear ?? null;
}
