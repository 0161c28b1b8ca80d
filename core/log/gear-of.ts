import { channelOf, type Log } from './channel.ts';
import type { PullOptions } from './find-pulls.ts';
import { medianOf } from './speed-ratio.ts';
import type { Span } from './time-axis.ts';

/** Tyre growth, slip and a speedometer that reads high move the ratio by a few percent (common practice). */
const nearEnough = 0.08;

/**
 * The gear of a pull: as logged, else from engine speed over vehicle speed and the car's ratios, else as the
 * tuner says; null where nobody knows.
 *
 * @param ratio  engine speed over vehicle speed within the pull [rad/m], NaN where no speed is logged
 */
export function gearOf(log: Log, span: Span, ratio: number, options: PullOptions): number | null {
  const logged = channelOf(log, 'gear');
  if (logged) {
    // Displays lag behind the box: the later half of a pull counts.
    const gear = medianOf(logged.values, (span.from + span.to) >> 1, span.to);
    if (gear >= 1 && gear <= 12) return Math.round(gear);
  }
  const { gearRatios, finalDrive, rollingRadius_m: radius } = options;
  if (gearRatios && finalDrive && radius && !Number.isNaN(ratio)) {
    let best: number | null = null;
    let nearest = nearEnough;
    gearRatios.forEach((r, i) => {
      const off = Math.abs((ratio * radius) / (r * finalDrive) - 1);
      if (off < nearest) {
        nearest = off;
        best = i + 1;
      }
    });
    if (best !== null) return best;
  }
  return options.pullGear ?? null;
}
