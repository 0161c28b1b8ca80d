import type { FuelBlend } from '../fluids/index.ts';

/**
 * Research octane of the alcohols, measured neat: methanol 108.7, ethanol 108.6.
 *
 * Source: Florian and Liming compilation of measured values; published values scatter by 3 to 4.
 */
export const alcoholOctane = { methanol: 108.7, ethanol: 108.6 } as const;

/**
 * Octane of what burns.
 *
 *   ON = sum m_i ON_i / sum m_i          petrol and alcohols by mass
 *
 * @param petrolOctane  of the petrol as bought, its own ethanol included
 * @param petrolMass    of that petrol, and `alcohol` what the spray brings, in one unit
 *
 * Valid:  a low estimate: blending values of alcohol are above its neat ones. Water counts for nothing here, it
 *         cools and thins, which the charge carries.
 */
export function blendOctane(petrolOctane: number, petrolMass: number, alcohol: FuelBlend): number {
  const methanol = alcohol.methanol ?? 0;
  const ethanol = alcohol.ethanol ?? 0;
  const mass = petrolMass + methanol + ethanol;
  if (!(mass > 0)) return petrolOctane;
  return (
    (petrolMass * petrolOctane + methanol * alcoholOctane.methanol + ethanol * alcoholOctane.ethanol) / mass
  );
}
