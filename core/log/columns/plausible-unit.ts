import { type Kind, kindOf } from '../../units/index.ts';
import { type QuantityId, quantities } from '../quantity.ts';
import type { Spread } from '../spread.ts';

/** Metric or imperial, from the units that the file does state; null where it states none. */
export type UnitSystem = 'metric' | 'imperial' | null;

/** A unit told from the numbers; `sureness` multiplies the confidence of the column. */
export type GuessedUnit = { readonly unit: string; readonly sureness: number };

/** No petrol engine turns faster [1/min], no car drives faster, in any unit of speed (common practice). */
const fastestEngine = 20_000;
const fastestCar = 500;

const clear = 0.93;
const likely = 0.8;
const hardly = 0.6;

/**
 * The unit that makes a column's numbers plausible for its quantity. Limits are what an engine under test shows
 * (common practice): coolant of 190 is no Celsius, a manifold at 2.2 is in bar, at 220 in kPa.
 *
 * @returns null where no unit of the program makes sense of the numbers
 */
export function plausibleUnit(quantity: QuantityId, values: Spread, system: UnitSystem): GuessedUnit | null {
  const kind: Kind = kindOf(quantities[quantity]);
  const { low, middle, high } = values;
  const { min, max } = withoutSpikes(values);
  const bySystem = (metric: string, imperial: string): GuessedUnit =>
    system === 'imperial'
      ? { unit: imperial, sureness: likely }
      : { unit: metric, sureness: system ? likely : hardly };
  switch (kind) {
    case 'engineSpeed':
      if (high > fastestEngine) return null;
      // Turns in a second, or in thousands a minute, where they can be no turns a minute: no engine idles at 100.
      if (max > 400 || max < 1) return { unit: 'rpm', sureness: max > 400 ? clear : hardly };
      return max > 12 ? { unit: 'rps', sureness: hardly } : { unit: 'krpm', sureness: hardly };
    case 'speed':
      return high > fastestCar ? null : bySystem('km/h', 'mph');
    case 'temperature':
      return temperatureUnit(quantity, middle, high, system);
    case 'pressure':
      return quantity === 'barometricPressure'
        ? barometerUnit(middle)
        : quantity === 'fuelPressure' || quantity === 'fluidPressure'
          ? fluidPressureUnit(max, system)
          : manifoldUnit(min, max, low);
    case 'share':
      if (quantity === 'fuelTrimShort' || quantity === 'fuelTrimLong')
        return { unit: Math.max(-min, max) <= 0.6 && max !== 0 ? '1' : '%', sureness: likely };
      if (max <= 1.3 && max > 0) return { unit: '1', sureness: likely };
      // Five volts feed the sensor; a pedal that never opens further than 5 % says nothing anyway.
      if (quantity === 'pedal' || quantity === 'throttle') {
        if (max > 1.5 && max <= 5.3 && high > 1.5) return { unit: 'V', sureness: hardly };
        if (max > 1500 && max <= 5300) return { unit: 'mV', sureness: hardly };
      }
      if (neverBeyond.has(quantity) && max > 110 && max <= 255) return { unit: '1/255', sureness: likely };
      return { unit: '%', sureness: clear };
    case 'lambda':
      return { unit: middle < 3 ? 'lambda' : 'AFR', sureness: clear };
    case 'angle':
      return { unit: 'deg', sureness: clear };
    case 'massFlow':
      // No boosted engine at work breathes so little in any usual unit; a meter's volts are as much.
      if (quantity === 'airMassFlow' && max <= 5.5) return null;
      return quantity === 'airMassFlow' && max > 600
        ? { unit: 'kg/h', sureness: likely }
        : bySystem('g/s', 'lb/min');
    case 'volumeFlow':
      return { unit: 'mL/min', sureness: likely };
    case 'power':
      return bySystem('kW', 'hp');
    case 'torque':
      return bySystem('Nm', 'lb ft');
    case 'acceleration':
      return Math.max(-min, max) < 1.6
        ? { unit: 'g0', sureness: likely }
        : { unit: 'm/s2', sureness: likely };
    case 'length':
      return bySystem('m', 'ft');
    case 'voltage':
      return { unit: max > 100 ? 'mV' : 'V', sureness: clear };
    case 'time':
      return { unit: max > 100 ? 'us' : 'ms', sureness: likely };
    case 'number':
      return { unit: '', sureness: 1 };
    default:
      return null;
  }
}

/** What ends at 100 %: more is the count of a byte. An injector asked for more than its time can go beyond. */
const neverBeyond: ReadonlySet<string> = new Set(['pedal', 'throttle', 'wastegateDuty', 'fluidDuty']);

function temperatureUnit(
  quantity: QuantityId,
  middle: number,
  high: number,
  system: UnitSystem,
): GuessedUnit {
  // Where Fahrenheit and Kelvin begin to be the only sense, by where the sensor sits.
  const [fahrenheitFrom, kelvinFrom] =
    quantity === 'coolantTemperature'
      ? [130, 280]
      : quantity === 'oilTemperature'
        ? [150, 310]
        : quantity === 'exhaustTemperature'
          ? [1150, Number.POSITIVE_INFINITY]
          : quantity === 'ambientTemperature'
            ? [50, 230]
            : quantity === 'fuelTemperature'
              ? [75, 240]
              : [95, 240];
  if (middle > kelvinFrom) return { unit: 'K', sureness: clear };
  if (quantity === 'exhaustTemperature' ? high > fahrenheitFrom : middle > fahrenheitFrom)
    return { unit: 'F', sureness: quantity === 'intakeTemperature' ? likely : clear };
  if (quantity === 'coolantTemperature' && middle > 40) return { unit: 'C', sureness: clear };
  if (system === 'imperial') return { unit: 'F', sureness: likely };
  return { unit: 'C', sureness: system === 'metric' ? clear : likely };
}

/** A reading of 65535 or -1 among sound ones says nothing of the unit: far beyond 96 of 100 readings it is left out. */
function withoutSpikes({ min, low, high, max }: Spread): { min: number; max: number } {
  const reach = 3 * (high - low) + 0.5 * Math.max(Math.abs(high), Math.abs(low));
  return { min: min < low - reach ? low : min, max: max > high + reach ? high : max };
}

/** An intake manifold is never emptier than this in psi, so what is lower is counted in kPa. */
const emptiest_psi = -15.5;
/** More boost or pressure than this in psi belongs to no engine on petrol (common practice). */
const most_psi = 52;

function manifoldUnit(min: number, max: number, low: number): GuessedUnit {
  const size = Math.max(max, -min);
  if (size >= 30_000) return { unit: 'Pa', sureness: clear };
  if (size > 520) return { unit: 'mbar', sureness: clear };
  if (size > most_psi || low < emptiest_psi) return { unit: 'kPa', sureness: clear };
  // Nothing is emptier than -1 bar, so a lower number is in psi.
  if (size > 6 || min < -1.1) return { unit: 'psi', sureness: likely };
  return { unit: 'bar', sureness: likely };
}

function barometerUnit(middle: number): GuessedUnit | null {
  if (middle > 50_000 && middle < 115_000) return { unit: 'Pa', sureness: clear };
  if (middle > 800 && middle < 1150) return { unit: 'hPa', sureness: clear };
  if (middle > 500 && middle <= 800) return { unit: 'mmHg', sureness: likely };
  if (middle > 50 && middle < 115) return { unit: 'kPa', sureness: clear };
  if (middle > 20 && middle < 33) return { unit: 'inHg', sureness: clear };
  if (middle > 9 && middle < 16) return { unit: 'psi', sureness: clear };
  if (middle > 0.5 && middle < 1.2) return { unit: 'bar', sureness: clear };
  return null;
}

function fluidPressureUnit(max: number, system: UnitSystem): GuessedUnit {
  if (max > 2500) return { unit: 'mbar', sureness: hardly };
  if (max > 260) return { unit: 'kPa', sureness: likely };
  if (max > 16) return { unit: system === 'metric' ? 'bar' : 'psi', sureness: hardly };
  return { unit: 'bar', sureness: likely };
}
