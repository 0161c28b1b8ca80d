import { channelOf, type Log, type Pull, type QuantityId } from '../../log/index.ts';
import type { Note } from '../../result/index.ts';
import type { Car } from '../car/car.ts';
import type { Conditions } from '../conditions.ts';
import { numbersWithin } from '../numbers-within.ts';
import { inputUncertainty, practice } from '../practice.ts';
import type { CorrectionStandard } from '../pull-power.ts';
import { barometerOf } from './air-of-pull.ts';
import { correctionFactor } from './correction-factor.ts';

export type PullCorrection = {
  readonly standard: CorrectionStandard;
  readonly factor: number;
  /** Relative standard uncertainty of the factor from humidity that nobody read. */
  readonly uncertainty: number;
  readonly notes: readonly Note[];
};

/** A barometer in a control unit is good to 1 kPa, and weather moves by as much in a day (common practice) [Pa]. */
const barometersApart = 2500;

/** A factor nearer to 1 is not worth a doubt: the usual margin of a verdict (common practice). */
const leastDoubt = 0.01;

/**
 * Correction that the car asks for, in the air of the pull (air-of-pull). Where pressure or temperature is unknown
 * or cannot be, nothing is corrected, and a note says so. A barometer as entered that the logged one contradicts is
 * used and told: reduced to sea level it is off by 12 kPa per 1000 m.
 */
export function pullCorrection(log: Log, pull: Pull, car: Car, air: Conditions): PullCorrection {
  const standard = car.correction;
  if (standard === 'none') return { standard, factor: 1, uncertainty: 0, notes: [] };
  const uncorrected = {
    standard: 'none',
    factor: 1,
    uncertainty: 0,
    notes: [{ code: 'power/correction-air-unknown', facts: { standard } }],
  } as const;
  if (air.barometer_kPa === null || air.ambient_C === null) return uncorrected;
  const pressure = air.barometer_kPa * 1000;
  const humidity = air.relativeHumidity_percent === null ? null : air.relativeHumidity_percent / 100;
  const boostRatio = boostRatioOf(log, pull, pressure);
  const temperature = air.ambient_C + 273.15;
  const at = (relativeHumidity: number) =>
    correctionFactor(
      standard,
      { pressure, temperature, relativeHumidity },
      boostRatio === null ? {} : { boostRatio },
    );
  const found = at(humidity ?? practice.relativeHumidity);
  if (!found.ok) return uncorrected;
  const { factor } = found.value;
  const notes: Note[] = [];
  const logged = barometerOf(log, pull);
  if (logged !== null && Math.abs(logged - pressure) > barometersApart)
    notes.push({ code: 'power/barometers-disagree', facts: { entered: pressure, logged } });
  if (boostRatio === null && Math.abs(factor - 1) > leastDoubt)
    notes.push({ code: 'power/correction-boost-untold', facts: { standard, factor } });
  // DIN 70020 has no humidity in it.
  if (humidity !== null || standard === 'DIN 70020')
    return { standard, factor, uncertainty: 0, notes: [...notes, ...found.value.notes] };
  const { relativeHumidity } = practice;
  const moist = at(relativeHumidity + inputUncertainty.humidityDefault);
  const uncertainty = moist.ok ? moist.value.factor / factor - 1 : 0;
  notes.push({ code: 'power/default-humidity', facts: { relativeHumidity, half: z95 * uncertainty } });
  return { standard, factor, uncertainty, notes: [...notes, ...found.value.notes] };
}

/** Two-sided 95 % of the normal distribution. */
const z95 = 1.96;

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
