import { ok, type Result } from '../result/index.ts';
import { alcoholShare, type Mix } from './mix.ts';
import { latentHeat, liquidHeatCapacity, type SubstanceId, substanceIds, substances } from './substance.ts';

function massWeighted(mix: Mix, property: (id: SubstanceId) => Result<number>): Result<number> {
  let sum = 0;
  for (const id of substanceIds) {
    const share = mix.massShares[id];
    if (share === 0) continue;
    const value = property(id);
    if (!value.ok) return value;
    sum += share * value.value;
  }
  return ok(sum);
}

/**
 * Latent heat of a whole mix, all of it evaporated at one temperature [J/kg].
 *
 *   h = sum w_i h_i
 *
 * Heat of mixing (under 2 % of it) is left out: it is given back when the parts leave the liquid apart.
 *
 * Valid:  -20 to 150 C.
 * Check:  44.2 % methanol by mass at 25 C gives 1 877 000 within 1 %.
 */
export function mixLatentHeat(mix: Mix, temperature: number): Result<number> {
  return massWeighted(mix, (id) => latentHeat(id, temperature));
}

/**
 * Specific heat of a mix [J/(kg K)]; w mass share of all alcohol, z = 1 - 2 w.
 *
 *   c = sum w_i c_i + w (1 - w) (A0 + A1 z + A2 z^2)
 *
 * Valid:  -20 to 100 C; within 4 % from 0 to 40 C and 60 % alcohol, above 60 % by continuation.
 * Source: excess fitted to Melinder, Properties of Secondary Working Fluids for Indirect Systems.
 * Fit:    the script is lost: the numbers stand as fitted, checked against Melinder's in tests/reference/fluids.
 */
export function mixHeatCapacity(mix: Mix, temperature: number): Result<number> {
  const ideal = massWeighted(mix, (id) => liquidHeatCapacity(id, temperature));
  const w = alcoholShare(mix);
  if (!ideal.ok || w === 0) return ideal;
  const z = 1 - 2 * w;
  const methanolPart = mix.massShares.methanol / w;
  const excess =
    methanolPart * (875.25 + z * (927.81 + z * 267.51)) +
    (1 - methanolPart) * (1955.71 + z * (1475.84 + z * 621.78));
  return ok(ideal.value + w * (1 - w) * excess);
}

/**
 * Lower heating value of a mix, per mass of mix with its water as liquid [J/kg]. The water's own latent heat is
 * not taken off: it is booked in the charge, where it is spent.
 */
export function mixLowerHeatingValue(mix: Mix): number {
  let sum = 0;
  for (const id of substanceIds) sum += mix.massShares[id] * substances[id].lowerHeatingValue;
  return sum;
}
