/**
 * Liquid that fills what one cylinder leaves above its piston: with more than that the piston can't come up [m^3].
 *
 *   V = swept / (ratio - 1)
 *
 * @param sweptVolume  of one cylinder [m^3]
 * @param compressionRatio  above 1
 *
 * Source: definition of compression ratio.
 * Check:  500 cm3 at 9.5 leave 58.8 mL.
 */
export function clearanceVolume(sweptVolume: number, compressionRatio: number): number {
  return sweptVolume / (compressionRatio - 1);
}
