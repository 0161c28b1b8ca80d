import { type Channel, channelOf, type Log, type Pull, type SpeedLag, speedLag } from '../../log/index.ts';
import type { PullWindow } from '../pull-window.ts';
import type { KnownLag } from './lag-of-log.ts';
import { type SpeedSignal, seldomSpeed, speedSignal } from './speed-signal.ts';

/** Road speed of a pull at the instants at which the engine drove the car so fast. */
export type RoadSpeed = SpeedSignal & {
  /** By which it reached the log late, as far as the seconds around the pull tell [s]; taken off its times. */
  readonly lag: number;
  /** The lag is the log's, not this pull's own. */
  readonly isKnown: boolean;
  readonly isSatellite: boolean;
};

/** Readings that can be: 1 to 540 km/h. */
const roadRange = [0.3, 150] as const;
/** After so many time constants a smoothed speed runs beside the true one but for a twentieth of its bend. */
const settled = 3;

const none: SpeedLag = { lag: 0, isSmoothed: false };

/** Vehicle speed or, where it is much quieter, the satellites'; null where neither has a reading in the window. */
export function roadSpeed(
  log: Log,
  pull: Pull,
  window: PullWindow,
  known: KnownLag | null,
): RoadSpeed | null {
  const wheels = channelOf(log, 'vehicleSpeed');
  const satellite = channelOf(log, 'gpsSpeed');
  const ofWheels = wheels ? read(log, wheels, window.useFrom, window.useTo) : null;
  const ofSatellite = satellite ? read(log, satellite, window.useFrom, window.useTo) : null;
  const signal = better(ofWheels, ofSatellite);
  const channel = signal !== null && signal === ofSatellite ? satellite : wheels;
  if (!signal || !channel) return null;
  const isSatellite = channel === satellite;
  const isKnown = known !== null;
  // What is known to be on time need not be asked: that costs a tenth of a pull's power.
  const own = known?.lag === 0 ? none : lagOf(log, channel, pull);
  // A filter and a delay come equally late, but the filter still remembers what was before.
  const late = isKnown ? { lag: known.lag, isSmoothed: own.isSmoothed } : own;
  if (late.lag === 0) return { ...signal, lag: 0, isKnown, isSatellite };
  const rows = rowsOfPull(log, window, late);
  const onTime = read(log, channel, rows.from, rows.to);
  if (!onTime) return { ...signal, lag: 0, isKnown: false, isSatellite };
  return { ...onTime, time: onTime.time.map((t) => t - late.lag), lag: late.lag, isKnown, isSatellite };
}

/**
 * Rows in which a speed that comes late tells of the pull. One that is put off does so from one end of it to the other,
 * that much later. A smoothed one remembers what was before: it is on its way after three of its time constants, and
 * what comes after the pull is in it at once.
 */
function rowsOfPull(log: Log, window: PullWindow, { lag, isSmoothed }: SpeedLag) {
  const at = (i: number) => log.time[i] as number;
  let from = window.useFrom;
  let to = window.useTo;
  const segment = log.segments.find((s) => s.from <= from && from < s.to) ?? { from, to };
  const start = at(window.useFrom) + (isSmoothed ? settled * lag : lag);
  const end = at(window.useTo - 1) + (isSmoothed ? 0 : lag);
  while (from < segment.to - 1 && at(from) < start) from++;
  while (from > segment.from && at(from - 1) >= start) from--;
  while (to < segment.to && at(to) <= end) to++;
  while (to > from + 1 && at(to - 1) > end) to--;
  return { from, to };
}

function read(log: Log, channel: Channel, from: number, to: number): SpeedSignal | null {
  return seldomSpeed(log, channel, from, to, roadRange) ?? speedSignal(log, channel, from, to, roadRange);
}

function lagOf(log: Log, channel: Channel, pull: Pull): SpeedLag {
  const engine = channelOf(log, 'engineSpeed');
  const segment = log.segments.find((s) => s.from <= pull.from && pull.from < s.to);
  return engine && segment ? speedLag(log.time, engine.values, channel.values, pull, segment) : none;
}

/** Of two road speeds the one that gives the quieter slope; wheels where they are equal, since they are prompt. */
function better(wheels: SpeedSignal | null, satellite: SpeedSignal | null): SpeedSignal | null {
  if (!wheels || !satellite) return wheels ?? satellite;
  const quiet = (s: SpeedSignal) => s.noise / Math.sqrt(s.time.length);
  return quiet(satellite) < 0.5 * quiet(wheels) ? satellite : wheels;
}
