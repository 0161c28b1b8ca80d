import { fail, ok, type Result } from '../result/index.ts';
import { celsius } from '../units/index.ts';
import { airDemand, blendHeat, type FuelBlend, petrol } from './stoichiometry.ts';
import { substances } from './substance.ts';
import { curveValue } from './temperature-curve.ts';

/** Petrol as it comes from the pump: ethanol by volume, and what follows from it. */
export type PetrolBlend = {
  readonly ethanolVolumeShare: number;
  /** Mass shares, adding up to 1. */
  readonly parts: { readonly petrol: number; readonly ethanol: number };
  /** kg air per kg fuel. */
  readonly stoichiometricAirFuel: number;
  /** [J/kg] */
  readonly lowerHeatingValue: number;
  /** [J/kg] */
  readonly latentHeat: number;
};

/**
 * Petrol with any share of ethanol.
 *
 * @param ethanolVolumeShare  as the pump names it: E10 is 0.10
 *
 * Valid:  0 to 1; volumes add up within 0.3 % (from memory). Ethanol at 15.6 C for the share, petrol 745 kg/m^3.
 * Errors: fluids/share-negative, fluids/shares-over-whole, fluids/share-missing.
 * Source: element balance; US DOE Alternative Fuels Data Center for petrol's heating value.
 * Check:  E10 is 10.5 % ethanol by mass and burns at 14.01.
 */
export function petrolBlend(ethanolVolumeShare: number): Result<PetrolBlend> {
  if (!Number.isFinite(ethanolVolumeShare))
    return fail({ code: 'fluids/share-missing', facts: { substance: 'ethanol' } });
  if (ethanolVolumeShare < 0)
    return fail({
      code: 'fluids/share-negative',
      facts: { substance: 'ethanol', share: ethanolVolumeShare },
    });
  if (ethanolVolumeShare > 1)
    return fail({ code: 'fluids/shares-over-whole', facts: { sum: ethanolVolumeShare } });
  const ethanolDensity = curveValue(substances.ethanol.curves.density, 'density', celsius(20));
  if (!ethanolDensity.ok) return ethanolDensity;
  const ethanolMass = ethanolVolumeShare * ethanolDensity.value;
  const petrolMass = (1 - ethanolVolumeShare) * petrol.density;
  const whole = ethanolMass + petrolMass;
  const parts = { petrol: petrolMass / whole, ethanol: ethanolMass / whole };
  const ethanolLatent = curveValue(substances.ethanol.curves.latentHeat, 'latentHeat', celsius(25));
  if (!ethanolLatent.ok) return ethanolLatent;
  const blend: FuelBlend = parts;
  return ok({
    ethanolVolumeShare,
    parts,
    stoichiometricAirFuel: airDemand(blend),
    lowerHeatingValue: blendHeat(blend),
    latentHeat: parts.petrol * petrol.latentHeat + parts.ethanol * ethanolLatent.value,
  });
}

/**
 * Density of pump petrol [kg/m^3].
 *
 *   rho = rho_15 / (1 + b (T - 288.15))       parts by volume
 *
 * Valid:  -20 to 60 C within 3 % of the pump's own; b from memory.
 */
export function petrolDensity(blend: PetrolBlend, temperature: number): Result<number> {
  const ethanol = curveValue(substances.ethanol.curves.density, 'density', temperature);
  if (!ethanol.ok) return ethanol;
  const plain = petrol.density / (1 + petrol.expansion * (temperature - celsius(15)));
  return ok(1 / (blend.parts.petrol / plain + blend.parts.ethanol / ethanol.value));
}
