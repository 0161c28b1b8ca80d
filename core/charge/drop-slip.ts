import { dryAirHeatCapacity, dryAirMolarMass, gasConstant } from './charge-air.ts';
import { airConductivity } from './droplet.ts';

/** Slip of a pressure nozzle's drops against the charge where they leave it [m/s]: 10 to 50 (common practice). */
const practiceSlip = 30;
const steps = 40;

/**
 * Viscosity of air [Pa s].
 *
 *   mu = 1.716e-5 (T / 273.15)^1.5 (273.15 + 110.4) / (T + 110.4)
 *
 * Valid:  -70 to 1600 C within 2 %.
 * Source: Sutherland’s formula, constants of the US Standard Atmosphere 1976.
 * Check:  300 K gives 1.846e-5.
 */
export function airViscosity(temperature: number): number {
  return 1.716e-5 * (temperature / 273.15) ** 1.5 * ((273.15 + 110.4) / (temperature + 110.4));
}

/**
 * How much faster a drop evaporates for overtaking the air: mean over its way, 1 for one that swims along.
 *
 *   Nu / 2 = 1 + 0.3 Re^(1/2) Pr^(1/3)
 *   du/dt = -18 mu u (1 + 0.15 Re^0.687) / (rho_l d^2),     Re = rho u d / mu
 *
 * @param of.time  on the way [s]
 *
 * Valid:  Re 0 to 200 for the one, to 800 for the other; the drop keeps its size, the air its state; eddies of the
 *         charge stir on when the slip has died, which is left out.
 * Source: Ranz and Marshall, Chem. Eng. Prog. 48 (1952), p. 141; drag: Schiller and Naumann (1933).
 * Check:  Re 100 at Pr 0.71 gives 3.68.
 */
export function stirringOnTheWay(of: {
  readonly diameter: number;
  readonly liquidDensity: number;
  /** Of the charge [Pa], [K]. */
  readonly pressure: number;
  readonly temperature: number;
  readonly time: number;
  readonly slip?: number;
}): number {
  const { diameter, liquidDensity, pressure, temperature, time } = of;
  const density = (pressure * dryAirMolarMass) / (gasConstant * temperature);
  const viscosity = airViscosity(temperature);
  const prandtl = (viscosity * dryAirHeatCapacity) / airConductivity(temperature);
  const relaxation = (liquidDensity * diameter * diameter) / (18 * viscosity);
  let slip = of.slip ?? practiceSlip;
  let sum = 0;
  const width = time / steps;
  for (let i = 0; i < steps; i++) {
    const reynolds = (density * slip * diameter) / viscosity;
    sum += 1 + 0.3 * Math.sqrt(reynolds) * Math.cbrt(prandtl);
    // Exact for a drag that stands still over the step: never below zero, whatever the step.
    slip *= Math.exp((-width / relaxation) * (1 + 0.15 * reynolds ** 0.687));
  }
  return sum / steps;
}
