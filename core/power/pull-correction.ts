import { channelOf, type Log, type Pull, type QuantityId } from '../log/index.ts';
import type { Note } from '../result/index.ts';
import type { Car } from './car.ts';
import type { Conditions } from './conditions.ts';
import { correctionFactor } from './correction-factor.ts';
import { practice } from './practice.ts';
import type { CorrectionStandard } from './pull-power.ts';
import { median } from './speed-signal.ts';

/**
 * Correction that the car asks for, in the air of the day: as entered, else as logged through the pull (barometer,
 * ambient temperature, humidity). Intake temperature is not taken: it is measured behind the compressor or in a
 * hot engine bay. Where pressure or temperature is unknown nothing is corrected, and a note says so.
 */
export function pullCorrection(
  log: Log,
  pull: Pull,
  car: Car,
  conditions: Conditions,
): { readonly standard: CorrectionStandard; readonly factor: number; readonly notes: readonly Note[] } {
  const standard = car.correction;
  if (standard === 'none') return { standard, factor: 1, notes: [] };
  const through = (quantity: QuantityId) => {
    const channel = channelOf(log, quantity);
    if (!channel) return null;
    const level = median(channel.values.slice(pull.from, pull.to).filter(Number.isFinite));
    return Number.isFinite(level) ? level : null;
  };
  const pressure =
    conditions.barometer_kPa !== null ? conditions.barometer_kPa * 1000 : through('barometricPressure');
  const temperature =
    conditions.ambient_C !== null ? conditions.ambient_C + 273.15 : through('ambientTemperature');
  if (pressure === null || temperature === null) {
    const note: Note = { code: 'power/correction-air-unknown', facts: { standard } };
    return { standard: 'none', factor: 1, notes: [note] };
  }
  const notes: Note[] = [];
  const humidity =
    conditions.relativeHumidity_percent !== null
      ? conditions.relativeHumidity_percent / 100
      : through('relativeHumidity');
  // DIN 70020 has no humidity in it.
  if (humidity === null && standard !== 'DIN 70020')
    notes.push({ code: 'power/default-humidity', facts: { relativeHumidity: practice.relativeHumidity } });
  const manifold = peakOf(log, pull, 'manifoldPressure');
  const boost = peakOf(log, pull, 'boost');
  const boostRatio =
    manifold !== null ? manifold / pressure : boost !== null ? 1 + boost / pressure : undefined;
  const factor = correctionFactor(
    standard,
    { pressure, temperature, relativeHumidity: humidity ?? practice.relativeHumidity },
    boostRatio === undefined ? {} : { boostRatio },
  );
  if (!factor.ok) {
    const note: Note = { code: 'power/correction-air-unknown', facts: { standard } };
    return { standard: 'none', factor: 1, notes: [note] };
  }
  return { standard, factor: factor.value.factor, notes: [...notes, ...factor.value.notes] };
}

/** Level that the upper tenth of the pull's samples reaches. */
function peakOf(log: Log, pull: Pull, quantity: QuantityId): number | null {
  const channel = channelOf(log, quantity);
  if (!channel) return null;
  const sorted = channel.values.slice(pull.from, pull.to).filter(Number.isFinite).sort();
  return sorted[Math.floor(0.9 * (sorted.length - 1))] ?? null;
}
