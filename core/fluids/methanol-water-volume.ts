/** What the temperature terms were fitted over; the CRC column itself stands at 20 C. */
export const methanolWaterValid = { from: 263.15, to: 313.15 };

/**
 * Excess volume of methanol-water [m^3/kg], negative: the mix takes less room than its parts.
 * w mass share of methanol, z = 1 - 2 w, d = T - 293.15 K.
 *
 *   v = w (1 - w) [ sum A_k z^k + d (B0 + B1 z) + d^2 (C0 + C1 z) ]
 *
 * Valid:  0 to 1 at 20 C, within 0.12 kg/m^3 of the table; -10 to 40 C up to 60 % within 1 kg/m^3, above 60 %
 *         the temperature terms are continued to zero at pure methanol. The caller keeps to the range.
 * Source: A fitted to the CRC Handbook, 102nd ed., Concentrative Properties of Aqueous Solutions (20 C);
 *         B and C to Melinder, Properties of Secondary Working Fluids for Indirect Systems (0 to 40 C).
 * Fit:    A is fitted again in tests/reference/fluids/fits. The script of B and C is lost: they stand as fitted,
 *         checked against points of Melinder's in tests/reference/fluids.
 */
export function methanolWaterExcessVolume(massShare: number, temperature: number): number {
  const w = massShare;
  const z = 1 - 2 * w;
  const d = temperature - 293.15;
  const atReference = -1.61487e-4 + z * (4.3668e-5 + z * (1.51283e-5 + z * 3.14739e-5));
  const warming = d * (-2.26408e-7 - 2.88424e-7 * z + d * (-9.43912e-9 + 4.76521e-9 * z));
  return w * (1 - w) * (atReference + warming);
}
