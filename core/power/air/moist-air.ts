import { type FormulaCard, input } from '../explain.ts';

/** Specific gas constants [J/(kg K)]: dry air and water vapour, ASHRAE Handbook Fundamentals 2017, chapter 1. */
export const dryAirGasConstant = 287.042;
export const vapourGasConstant = 461.524;

const overIce = [
  -5.6745359e3, 6.3925247, -9.677843e-3, 6.2215701e-7, 2.0747825e-9, -9.484024e-13, 4.1635019,
] as const;
const overWater = [-5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 6.5459673] as const;

/**
 * Saturation pressure of water vapour in air.
 *
 *   ln p = C1/T + C2 + C3 T + C4 T^2 + C5 T^3 (+ C6 T^4) + C7 ln T
 *
 * @param temperature  [K]
 * @returns            [Pa]; over ice below 0.01 C, over water above
 *
 * Valid:  173 to 473 K; outside it is extrapolated.
 * Source: Hyland and Wexler as in ASHRAE Handbook Fundamentals 2017, chapter 1, equations 5 and 6.
 * Check:  25 C gives 3169 Pa.
 */
export function saturationPressure(temperature: number): number {
  const t = temperature;
  if (t < 273.16) {
    const [c1, c2, c3, c4, c5, c6, c7] = overIce;
    return Math.exp(c1 / t + c2 + t * (c3 + t * (c4 + t * (c5 + t * c6))) + c7 * Math.log(t));
  }
  const [c8, c9, c10, c11, c12, c13] = overWater;
  return Math.exp(c8 / t + c9 + t * (c10 + t * (c11 + t * c12)) + c13 * Math.log(t));
}

/** The air around the car: absolute pressure [Pa], temperature [K], relative humidity 0 to 1. */
export type Air = {
  readonly pressure: number;
  readonly temperature: number;
  readonly relativeHumidity: number;
};

/**
 * Pressure of the dry part of the air: barometer less vapour.  [Pa]
 *
 * Check: 100.0 kPa, 35 C, 60 % gives 96.62 kPa.
 */
export function dryPressure(air: Air): number {
  return air.pressure - air.relativeHumidity * saturationPressure(air.temperature);
}

/**
 * Mass of water per mass of dry air, the mixture taken as ideal gases.
 *
 *   W = 0.621945 pv / (p - pv)
 *
 * Source: ASHRAE Handbook Fundamentals 2017, chapter 1, equation 20; its own table lies 0.4 to 1.2 % higher
 * because it holds the enhancement factor.
 */
export function humidityRatio(air: Air): number {
  const vapour = air.relativeHumidity * saturationPressure(air.temperature);
  return (0.621945 * vapour) / (air.pressure - vapour);
}

/**
 * Density of moist air.  [kg/m^3]
 *
 *   rho = pd / (Rd T) + pv / (Rv T)
 *
 * Check: 101.325 kPa, 25 C, 50 % gives 1.177 kg/m^3.
 */
export function moistAirDensity(air: Air): number {
  const vapour = air.relativeHumidity * saturationPressure(air.temperature);
  return ((air.pressure - vapour) / dryAirGasConstant + vapour / vapourGasConstant) / air.temperature;
}

export const explainAirDensity: FormulaCard = {
  formula: 'rho = (p - pv) / (Rd T) + pv / (Rv T)',
  inputs: [
    input('p', 'Pa', 'barometer, absolute'),
    input('T', 'K', 'ambient temperature'),
    input('pv', 'Pa', 'relative humidity times saturation pressure'),
  ],
  source: 'ASHRAE Handbook Fundamentals 2017, chapter 1 (ideal mixture; Hyland-Wexler saturation pressure)',
  validRange: '-20 to 60 C, 50 to 110 kPa absolute',
};
