import {
  type SubstanceId,
  substanceIds,
  substances,
  vapourHeatCapacity,
  vapourPressure,
} from '../fluids/index.ts';
import { fail, ok, type Problem, type Result } from '../result/index.ts';

/** One number for each part of a spray fluid, per kg of dry air. */
export type PartsPerAir = { readonly [S in SubstanceId]: number };
export const noParts: PartsPerAir = { water: 0, methanol: 0, ethanol: 0 };

/** Dry air with vapours: everything is booked per kg of dry air, which nothing on the way changes. */
export type ChargeAir = {
  /** Absolute [Pa]. */
  readonly pressure: number;
  /** [K] */
  readonly temperature: number;
  /** [kg per kg of dry air] */
  readonly vapour: PartsPerAir;
};

/** Molar gas constant, exact (SI 2019), and dry air: US Standard Atmosphere 1976. */
export const gasConstant = 8.314462618;
export const dryAirMolarMass = 28.9647e-3;
/**
 * Specific heat of dry air [J/(kg K)].
 *
 * Valid:  -20 to 150 C within 0.8 %; grows to 1013 at 120 C.
 * Source: ASHRAE Handbook Fundamentals 2017, chapter 1, equation 30.
 */
export const dryAirHeatCapacity = 1006;

/** Specific heat of a vapour [J/(kg K)]; held at the ends of its published range. */
export function vapourHeat(id: SubstanceId, temperature: number): number {
  const held = Math.min(573, Math.max(253.2, temperature));
  const heat = vapourHeatCapacity(id, held);
  if (!heat.ok) throw new Error(`vapour heat capacity of ${id} ends inside its own range`);
  return heat.value;
}

/** Specific heat of air with its vapours, per kg of dry air [J/(kg K)]. */
export function heatCapacityPerAir(vapour: PartsPerAir, temperature: number): number {
  let sum = dryAirHeatCapacity;
  for (const id of substanceIds) if (vapour[id] > 0) sum += vapour[id] * vapourHeat(id, temperature);
  return sum;
}

/** Moles of vapour per kg of dry air. */
export function vapourMoles(vapour: PartsPerAir): number {
  let sum = 0;
  for (const id of substanceIds) sum += vapour[id] / substances[id].molarMass;
  return sum;
}

/**
 * Mass of dry air in a cubic metre of charge [kg/m^3]: what an engine breathes by.
 *
 *   rho = p / (R T (1 / M_a + sum w_i / M_i))
 *
 * Valid:  ideal gases, drops take no room (under 0.1 % of it).
 * Check:  100 kPa, 300 K, dry, gives 1.1612.
 */
export function airDensity(air: ChargeAir): number {
  return air.pressure / (gasConstant * air.temperature * (1 / dryAirMolarMass + vapourMoles(air.vapour)));
}

/**
 * The air of the day.
 *
 *   w = (M_w / M_a) phi p_sat(T) / (p - phi p_sat(T))
 *
 * @param of  absolute pressure [Pa], temperature [K], relative humidity 0 to 1
 *
 * Valid:  -20 to 110 C, without the enhancement factor (humidity ratio 0.4 to 1.2 % low).
 * Errors: charge/pressure-not-positive, charge/humidity-outside, fluids/temperature-outside.
 * Source: ASHRAE Handbook Fundamentals 2017, chapter 1, equation 20.
 * Check:  25 C, saturated, 101.325 kPa holds 20.1 g per kg.
 */
export function ambientAir(of: {
  readonly pressure: number;
  readonly temperature: number;
  readonly relativeHumidity: number;
}): Result<ChargeAir> {
  const problems: Problem[] = [];
  if (!(of.pressure > 0))
    problems.push({ code: 'charge/pressure-not-positive', facts: { pressure: of.pressure } });
  if (!(of.relativeHumidity >= 0 && of.relativeHumidity <= 1))
    problems.push({
      code: 'charge/humidity-outside',
      facts: { relativeHumidity: of.relativeHumidity },
    });
  const saturation = vapourPressure('water', of.temperature);
  if (!saturation.ok) problems.push(...saturation.problems);
  const [first, ...rest] = problems;
  if (first) return fail(first, ...rest);
  if (!saturation.ok) throw new Error('a failed part carries a problem');
  // Air near boiling would be all vapour; such a day is not on this planet.
  const partial = Math.min(of.relativeHumidity * saturation.value, 0.9 * of.pressure);
  const water = ((substances.water.molarMass / dryAirMolarMass) * partial) / (of.pressure - partial);
  return ok({ pressure: of.pressure, temperature: of.temperature, vapour: { ...noParts, water } });
}
