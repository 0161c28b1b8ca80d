import { dropLifetime, evaporatedOf } from './droplet.ts';

/** Mean drop size of a nozzle of this trade [m]: 50 to 150 um (common practice). */
export const practiceDropDiameter = 80e-6;
/** Spread of a pressure nozzle's drops: 1.5 to 4 in Lefebvre, Atomization and Sprays (from memory). */
const spread = 2.5;
/** Gamma(1 - 1/2.5), exact to four digits. */
const gammaOfSpread = 1.4892;
const classes = 24;

/**
 * Share of a spray's mass that is gone after a time, its drops being of all sizes: small ones vanish first.
 *
 *   mass below d = 1 - exp(-(d / X)^q),   X = d_32 Gamma(1 - 1/q)       Rosin and Rammler
 *
 * @param meanDiameter  Sauter mean, d_32 [m]
 * @param constant      of evaporation [m^2/s], see evaporationConstant
 *
 * Valid:  each drop on its own, q = 2.5.
 * Source: Lefebvre, Atomization and Sprays (from memory).
 */
export function evaporatedOfSpray(time: number, meanDiameter: number, constant: number): number {
  const size = meanDiameter * gammaOfSpread;
  let sum = 0;
  for (let i = 0; i < classes; i++) {
    const diameter = size * (-Math.log(1 - (i + 0.5) / classes)) ** (1 / spread);
    sum += evaporatedOf(time, dropLifetime(diameter, constant));
  }
  return sum / classes;
}
