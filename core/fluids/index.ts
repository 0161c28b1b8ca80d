/**
 * Spray fluids and the fuel they meet. Temperatures in K, SI throughout, Results wherever a range can be left.
 *
 * One pure liquid ('water' | 'methanol' | 'ethanol'):
 *   liquidDensity, latentHeat, vapourPressure, liquidHeatCapacity, vapourHeatCapacity, liquidViscosity (id, T)
 *   substances[id]: molar mass, elements, boiling and flash point, heating value, every curve with its record
 *
 * A mix is made by mixByMass, mixPoured, mixByFinishedVolume or pure, and read by mixDensity, mixHeatCapacity,
 *   mixLatentHeat, mixViscosity, partialPressures, moleShares, freezingPoint, flashPoint, strengthOf (hydrometer)
 *
 * What burns: stoichiometricAirFuel(elements); airDemand, blendAirFuel, blendHeat over a FuelBlend of masses of
 *   petrol, ethanol, methanol and water; petrolBlend(ethanol share); blendOf(fuel, fluid, mass of fluid)
 *
 * fluidOf(input) gathers every property of one mix, fluidJson writes it for scripts.
 */
import './notes.ts';
import './problems.ts';

export * from './explain-petrol.ts';
export * from './flash-point.ts';
export * from './fluid-sheet.ts';
export * from './freezing-point.ts';
export * from './hazards.ts';
export * from './hydrometer.ts';
export {
  type AlcoholShares,
  alcoholShare,
  type Mix,
  mixByMass,
  mixPoured,
  moleShares,
  pouredShares,
  pure,
} from './mix.ts';
export * from './mix-density.ts';
export * from './mix-heat.ts';
export * from './mix-vapour-pressure.ts';
export * from './mix-viscosity.ts';
export * from './petrol-blend.ts';
export * from './stoichiometry.ts';
export * from './substance.ts';
export { curveValue, type TemperatureCurve, type TemperatureProperty } from './temperature-curve.ts';
