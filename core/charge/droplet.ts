import { dryAirHeatCapacity } from './charge-air.ts';

/**
 * Thermal conductivity of air [W/(m K)].
 *
 *   k = 0.0241 (T / 273.15)^0.81
 *
 * Valid:  0 to 500 C within 2 %.
 * Source: power law through handbook values at 0 and 300 C (from memory).
 */
export function airConductivity(temperature: number): number {
  return 0.0241 * (temperature / 273.15) ** 0.81;
}

/**
 * How fast the square of a drop's diameter falls [m^2/s]: the d-squared law.
 *
 *   K = 8 k / (rho_l c) ln(1 + B),   B = c (T - T_s) / h
 *
 * @param of.air           around the drop [K]
 * @param of.surface       of the drop: where saturation holds it [K]
 * @param of.latentHeat    of the fluid [J/kg]
 * @param of.density       of the fluid [kg/m^3]
 * @param of.stirring      what slip past the air multiplies it by; 1 for a drop that swims along
 *
 * Valid:  a single drop; a dense spray evaporates slower. The surface is taken at adiabatic saturation: against the
 *         mass-transfer form this is a fifth slow for water at room temperature (Lewis number 0.86).
 * Source: d-squared law (Spalding), Turns, An Introduction to Combustion, ch. 3 (from memory).
 * Check:  100 um of water 10 K above its wet bulb lives 12 s.
 */
export function evaporationConstant(of: {
  readonly air: number;
  readonly surface: number;
  readonly latentHeat: number;
  readonly density: number;
  readonly stirring?: number;
}): number {
  // Film between drop and air, a third of the way (common practice).
  const film = of.surface + (of.air - of.surface) / 3;
  const transfer = (dryAirHeatCapacity * Math.max(0, of.air - of.surface)) / of.latentHeat;
  const constant = (8 * airConductivity(film) * Math.log1p(transfer)) / (of.density * dryAirHeatCapacity);
  return constant * (of.stirring ?? 1);
}

/** Time until a drop is gone [s]: t = d^2 / K. Infinite in air that is full. */
export function dropLifetime(diameter: number, constant: number): number {
  return constant > 0 ? (diameter * diameter) / constant : Number.POSITIVE_INFINITY;
}

/**
 * Share of a drop's mass that is gone after a time.
 *
 *   1 - (1 - t / life)^(3/2)
 */
export function evaporatedOf(time: number, lifetime: number): number {
  return time >= lifetime ? 1 : 1 - (1 - Math.max(0, time) / lifetime) ** 1.5;
}

/**
 * Time that the charge takes from nozzle to valve [s].
 *
 *   t = L A rho / m_air
 *
 * @param massFlow  of dry air [kg/s]
 */
export function residenceTime(of: {
  readonly length: number;
  readonly bore: number;
  readonly density: number;
  readonly massFlow: number;
}): number {
  const area = (Math.PI / 4) * of.bore * of.bore;
  return (of.length * area * of.density) / of.massFlow;
}
