import { channelOf, type Log, median, type Pull, type QuantityId } from '../../log/index.ts';
import type { Conditions } from '../conditions.ts';
import { numbersWithin } from '../numbers-within.ts';

/**
 * The conditions with the air filled in from the log where a person entered none: barometer, ambient temperature and
 * humidity as they stood in the middle of the pull. Intake temperature is not taken for ambient: it is measured
 * behind the compressor or in a hot engine bay. What neither knows stays null.
 */
export function airOfPull(log: Log, pull: Pull, conditions: Conditions): Conditions {
  const pressure = barometerOf(log, pull);
  const temperature = levelOf(log, pull, 'ambientTemperature');
  const humidity = levelOf(log, pull, 'relativeHumidity');
  return {
    ...conditions,
    barometer_kPa: conditions.barometer_kPa ?? (pressure === null ? null : pressure / 1000),
    ambient_C: conditions.ambient_C ?? (temperature === null ? null : temperature - 273.15),
    relativeHumidity_percent:
      conditions.relativeHumidity_percent ?? (humidity === null ? null : humidity * 100),
  };
}

/** Barometer as logged in the middle of the pull, absolute [Pa]; null where there is none. */
export function barometerOf(log: Log, pull: Pull): number | null {
  return levelOf(log, pull, 'barometricPressure');
}

function levelOf(log: Log, pull: Pull, quantity: QuantityId): number | null {
  const channel = channelOf(log, quantity);
  if (!channel) return null;
  const level = median(numbersWithin(channel.values, pull.from, pull.to));
  return Number.isFinite(level) ? level : null;
}
