import { channelOf, type Log, type Pull, type QuantityId } from '../../log/index.ts';
import type { Note } from '../../result/index.ts';
import type { Car } from '../car/car.ts';
import type { Conditions } from '../conditions.ts';
import { numbersWithin } from '../numbers-within.ts';
import { practice } from '../practice.ts';
import type { CorrectionStandard } from '../pull-power.ts';
import { correctionFactor } from './correction-factor.ts';

/**
 * Correction that the car asks for, in the air of the pull (air-of-pull). Where pressure or temperature is unknown
 * or cannot be, nothing is corrected, and a note says so.
 */
export function pullCorrection(
  log: Log,
  pull: Pull,
  car: Car,
  air: Conditions,
): { readonly standard: CorrectionStandard; readonly factor: number; readonly notes: readonly Note[] } {
  const standard = car.correction;
  if (standard === 'none') return { standard, factor: 1, notes: [] };
  const uncorrected = {
    standard: 'none',
    factor: 1,
    notes: [{ code: 'power/correction-air-unknown', facts: { standard } }],
  } as const;
  if (air.barometer_kPa === null || air.ambient_C === null) return uncorrected;
  const pressure = air.barometer_kPa * 1000;
  const humidity = air.relativeHumidity_percent === null ? null : air.relativeHumidity_percent / 100;
  const boostRatio = boostRatioOf(log, pull, pressure);
  const found = correctionFactor(
    standard,
    {
      pressure,
      temperature: air.ambient_C + 273.15,
      relativeHumidity: humidity ?? practice.relativeHumidity,
    },
    boostRatio === null ? {} : { boostRatio },
  );
  if (!found.ok) return uncorrected;
  const notes: Note[] = [];
  // DIN 70020 has no humidity in it.
  if (humidity === null && standard !== 'DIN 70020')
    notes.push({
      code: 'power/default-humidity',
      facts: { relativeHumidity: practice.relativeHumidity },
    });
  return { standard, factor: found.value.factor, notes: [...notes, ...found.value.notes] };
}

function boostRatioOf(log: Log, pull: Pull, barometer: number): number | null {
  const manifold = highLevel(log, pull, 'manifoldPressure');
  if (manifold !== null) return manifold / barometer;
  const boost = highLevel(log, pull, 'boost');
  return boost === null ? null : 1 + boost / barometer;
}

/** Level that the upper tenth of the pull's samples reaches. */
function highLevel(log: Log, pull: Pull, quantity: QuantityId): number | null {
  const channel = channelOf(log, quantity);
  if (!channel) return null;
  const sorted = numbersWithin(channel.values, pull.from, pull.to).sort();
  return sorted[Math.floor(0.9 * (sorted.length - 1))] ?? null;
}
