import type { Result } from '../result/index.ts';
import { ethanol } from './substances/ethanol.ts';
import { methanol } from './substances/methanol.ts';
import { water } from './substances/water.ts';
import { curveValue, type TemperatureCurve, type TemperatureProperty } from './temperature-curve.ts';

/** What a spray fluid can be mixed of. */
export const substanceIds = ['water', 'methanol', 'ethanol'] as const;
export type SubstanceId = (typeof substanceIds)[number];
/** The parts that burn. */
export const alcoholIds = ['methanol', 'ethanol'] as const;
export type AlcoholId = (typeof alcoholIds)[number];

/** Atoms in one molecule, or per carbon atom of a fuel without one. */
export type Elements = { readonly C: number; readonly H: number; readonly O: number };

/** Everything the program knows of one pure liquid. */
export type Substance = {
  readonly id: SubstanceId;
  /** [kg/mol] */
  readonly molarMass: number;
  readonly molarMassSource: string;
  readonly elements: Elements;
  /** At 101.325 kPa [K]. */
  readonly boilingPoint: { readonly temperature: number; readonly source: string };
  /** Lower heating value of the liquid at 25 C [J/kg]; 0 where nothing burns. */
  readonly lowerHeatingValue: number;
  readonly lowerHeatingValueSource: string;
  /** Closed cup, the lowest published [K]; null where nothing burns. */
  readonly flashPoint: { readonly temperature: number; readonly source: string } | null;
  readonly curves: { readonly [P in TemperatureProperty]: TemperatureCurve };
};

export const substances: { readonly [S in SubstanceId]: Substance } = { water, methanol, ethanol };

/**
 * Density of a pure liquid at atmospheric pressure [kg/m^3].
 *
 * Valid:  -20 to 80 C (water from 0 C as a pure liquid, below as a part of a mix); see each record.
 * Errors: fluids/temperature-outside.
 * Check:  methanol at 20 C is 791.5, water 998.2.
 */
export function liquidDensity(id: SubstanceId, temperature: number): Result<number> {
  return curveValue(substances[id].curves.density, 'density', temperature);
}

/**
 * Latent heat of vaporisation of a pure liquid at its own temperature [J/kg].
 *
 * Valid:  -20 to 150 C; see each record.
 * Errors: fluids/temperature-outside.
 * Check:  water at 100 C is 2 256 400.
 */
export function latentHeat(id: SubstanceId, temperature: number): Result<number> {
  return curveValue(substances[id].curves.latentHeat, 'latentHeat', temperature);
}

/**
 * Vapour pressure over the pure liquid [Pa].
 *
 * Valid:  -20 to 110 C (water to 370 C); see each record.
 * Errors: fluids/temperature-outside.
 * Check:  methanol at 20 C is 12 997.
 */
export function vapourPressure(id: SubstanceId, temperature: number): Result<number> {
  return curveValue(substances[id].curves.vapourPressure, 'vapourPressure', temperature);
}

/** Specific heat of the pure liquid at constant pressure [J/(kg K)]. Valid: -20 to 100 C. */
export function liquidHeatCapacity(id: SubstanceId, temperature: number): Result<number> {
  return curveValue(substances[id].curves.liquidHeatCapacity, 'liquidHeatCapacity', temperature);
}

/**
 * Specific heat of the vapour as an ideal gas [J/(kg K)]. Valid: -20 to 300 C, dilute in air; saturated
 * methanol vapour on its own associates and takes up to three times as much near its boiling point.
 */
export function vapourHeatCapacity(id: SubstanceId, temperature: number): Result<number> {
  return curveValue(substances[id].curves.vapourHeatCapacity, 'vapourHeatCapacity', temperature);
}

/** Dynamic viscosity of the pure liquid [Pa s]. Valid: -20 to 80 C. */
export function liquidViscosity(id: SubstanceId, temperature: number): Result<number> {
  return curveValue(substances[id].curves.viscosity, 'viscosity', temperature);
}
