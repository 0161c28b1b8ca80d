import { latentHeat, petrol, stoichiometricAirFuel, substanceIds } from '../fluids/index.ts';
import {
  dryAirHeatCapacity,
  dryAirMolarMass,
  gasConstant,
  heatCapacityPerAir,
  vapourMoles,
} from './charge-air.ts';
import type { ChargeState } from './charge-along.ts';

/** What happens between port and closing of the valve, none of which anybody measures on a car. */
export type Trapping = {
  /** Warming by walls and burnt gas, less what the petrol takes to evaporate [K]. */
  readonly warming: number;
  /** Share of the drops at the port that evaporates in the cylinder in time to cool the end gas. */
  readonly evaporatedInCylinder: number;
};

/** The charge when the inlet valve has shut: temperature [K], exponent, and heat of combustion over p V. */
export type Trapped = { readonly temperature: number; readonly exponent: number; readonly heat: number };

/** Exponent of air with petrol vapour under compression, heat to the wall included (common practice: 1.30 to 1.34). */
const dryExponent = 1.32;
/** Share of the heat that raises pressure: what neither the wall nor unburnt fuel takes (common practice). */
const keptHeat = 0.8;
/** Drops left in a hot cylinder are warm when they go. */
const dropTemperature = 313.15;

/**
 * What the cylinder holds.
 *
 *   T = T_port + warming - s m_l h / c
 *   n = 1 + 0.32 (c_molar of air / c_molar of the charge)
 *   Q / (p V) = kept heat per kg of air / (R_charge T)
 *
 * Heat is limited by the air, as the mixture is rich under boost: petrol and alcohols give within 4 % the same per
 * kg of air, so what the alcohol brings is left out.
 */
export function trapped(port: ChargeState, trapping: Trapping): Trapped {
  let taken = 0;
  const vapour = { ...port.air.vapour };
  for (const id of substanceIds) {
    const drops = port.liquid.parts[id] * trapping.evaporatedInCylinder;
    if (drops <= 0) continue;
    const heat = latentHeat(id, dropTemperature);
    if (!heat.ok) throw new Error(`latent heat of ${id} ends below 40 C`);
    taken += drops * heat.value;
    vapour[id] += drops;
  }
  const capacity = heatCapacityPerAir(vapour, port.air.temperature);
  const temperature = port.air.temperature + trapping.warming - taken / capacity;
  const moles = 1 / dryAirMolarMass + vapourMoles(vapour);
  const molarOfAir = dryAirHeatCapacity * dryAirMolarMass;
  const exponent = 1 + (dryExponent - 1) * (molarOfAir / (capacity / moles));
  const perAir = (keptHeat * petrol.lowerHeatingValue) / stoichiometricAirFuel(petrol.elements);
  return { temperature, exponent, heat: perAir / (gasConstant * moles * temperature) };
}
