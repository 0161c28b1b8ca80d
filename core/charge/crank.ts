/** Geometry of one cylinder, as ratios. */
export type Crank = {
  readonly compressionRatio: number;
  /** Connecting rod over crank radius. */
  readonly rodToCrank: number;
};

/**
 * Cylinder volume over clearance volume.
 *
 *   V / Vc = 1 + (rc - 1) (R + 1 - cos a - sqrt(R^2 - sin^2 a)) / 2
 *
 * @param angle  of the crank from top dead centre, 0 there [rad]
 *
 * Source: Heywood, Internal Combustion Engine Fundamentals, ch. 2 (from memory).
 * Check:  1 at top, rc at bottom dead centre.
 */
export function volumeRatio(crank: Crank, angle: number): number {
  const { compressionRatio, rodToCrank } = crank;
  const rod = Math.sqrt(rodToCrank * rodToCrank - Math.sin(angle) ** 2);
  return 1 + ((compressionRatio - 1) / 2) * (rodToCrank + 1 - Math.cos(angle) - rod);
}

/**
 * Share burnt over crank angle.
 *
 *   x = 1 - exp(-5 ((a - a0) / D)^3)
 *
 * @param since     angle since the spark over the burn's whole duration D
 *
 * Source: Wiebe; constants 5 and 2 as in Heywood, ch. 9 (from memory).
 */
export function burntShare(since: number): number {
  return since <= 0 ? 0 : 1 - Math.exp(-5 * since ** 3);
}
