import { fail, ok, type Result } from '../result/index.ts';
import type { Mix } from './mix.ts';
import { type Elements, substances } from './substance.ts';

/** Dry air: mole share of oxygen, molar mass [kg/mol]. US Standard Atmosphere 1976. */
export const dryAir = { oxygenShare: 0.20946, molarMass: 28.9647e-3 } as const;
/** [kg/mol], IUPAC 2021 abridged. */
export const atomicMass = { C: 12.011e-3, H: 1.008e-3, O: 15.999e-3 } as const;

/** Oxygen by mass in dry air. Check: 0.2314. */
export const oxygenMassShare = (dryAir.oxygenShare * 2 * atomicMass.O) / dryAir.molarMass;

/**
 * Stoichiometric air/fuel ratio by mass of a fuel C_c H_h O_o; 0 for what has nothing left to burn.
 *
 *   C_c H_h O_o + (c + h/4 - o/2) O2 -> c CO2 + h/2 H2O
 *
 * Valid:  dry air of 20.946 % oxygen; textbooks that take 23 % by mass print 0.8 % more.
 * Source: element balance.
 * Check:  methanol 6.47, ethanol 9.00, CH1.87 14.60.
 */
export function stoichiometricAirFuel(elements: Elements): number {
  const { C, H, O } = elements;
  const oxygen = C + H / 4 - O / 2;
  const mass = C * atomicMass.C + H * atomicMass.H + O * atomicMass.O;
  // Water comes out at an exact zero, as it must.
  return mass === 0 ? 0 : ((oxygen / dryAir.oxygenShare) * dryAir.molarMass) / mass;
}

/** What can meet in the chamber. */
export const fuelParts = ['petrol', 'ethanol', 'methanol', 'water'] as const;
export type FuelPart = (typeof fuelParts)[number];

/**
 * Petrol without alcohol in it. Every number is typical, not this tank's: H/C runs 1.75 to 1.95, density 720 to
 * 775 kg/m^3 at 15 C (EN 228).
 */
export const petrol = {
  elements: { C: 1, H: 1.87, O: 0 } satisfies Elements,
  /** At 15 C [kg/m^3]. */
  density: 745,
  /** Cubic expansion [1/K], from memory. */
  expansion: 1.0e-3,
  /** [J/kg] */
  lowerHeatingValue: 43.4e6,
  /** A wide-boiling mixture has no single value [J/kg]. */
  latentHeat: 330e3,
  source:
    'heating value and latent heat: US DOE Alternative Fuels Data Center, Properties of Fuels; H/C and density: common practice',
} as const;

const partElements: { readonly [P in FuelPart]: Elements } = {
  petrol: petrol.elements,
  ethanol: substances.ethanol.elements,
  methanol: substances.methanol.elements,
  water: substances.water.elements,
};

/** Masses of the parts, in any one unit; what is missing is 0. */
export type FuelBlend = { readonly [P in FuelPart]?: number };

/**
 * Air that burns a blend completely: kg of dry air for the masses given.
 *
 *   sum m_i AFR_i        the element balance is linear in mass
 *
 * Check: 1 kg petrol with 0.075 kg methanol takes 15.08 kg.
 */
export function airDemand(blend: FuelBlend): number {
  let sum = 0;
  for (const part of fuelParts) {
    const mass = blend[part] ?? 0;
    if (mass > 0) sum += mass * stoichiometricAirFuel(partElements[part]);
  }
  return sum;
}

/**
 * Stoichiometric air/fuel ratio of a blend, counting what burns and the oxygen it brings, not its water.
 *
 * @returns  kg air per kg of petrol and alcohol
 * Errors: fluids/nothing-burns.
 * Check:  petrol with 10 % ethanol by volume 14.01.
 */
export function blendAirFuel(blend: FuelBlend): Result<number> {
  const mass = (blend.petrol ?? 0) + (blend.ethanol ?? 0) + (blend.methanol ?? 0);
  if (!(mass > 0)) return fail({ code: 'fluids/nothing-burns', facts: {} });
  return ok(airDemand(blend) / mass);
}

/** Lower heating value of what burns in a blend, for the masses given [J for kg]. */
export function blendHeat(blend: FuelBlend): number {
  return (
    (blend.petrol ?? 0) * petrol.lowerHeatingValue +
    (blend.ethanol ?? 0) * substances.ethanol.lowerHeatingValue +
    (blend.methanol ?? 0) * substances.methanol.lowerHeatingValue
  );
}

/** A mix, and the fuel it meets, as one blend: masses as given. */
export function blendOf(fuel: FuelBlend, fluid: Mix, fluidMass: number): FuelBlend {
  return {
    petrol: fuel.petrol ?? 0,
    ethanol: (fuel.ethanol ?? 0) + fluidMass * fluid.massShares.ethanol,
    methanol: (fuel.methanol ?? 0) + fluidMass * fluid.massShares.methanol,
    water: (fuel.water ?? 0) + fluidMass * fluid.massShares.water,
  };
}
