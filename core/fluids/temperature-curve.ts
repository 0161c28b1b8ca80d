import { fail, ok, type Result } from '../result/index.ts';

/** The properties that a record gives over temperature. */
export const temperatureProperties = [
  'density',
  'latentHeat',
  'vapourPressure',
  'liquidHeatCapacity',
  'vapourHeatCapacity',
  'viscosity',
] as const;
export type TemperatureProperty = (typeof temperatureProperties)[number];

/**
 * One property over temperature: coefficients, form, valid range, worst error and citation in one record, so
 * that nobody takes the numbers and leaves the range behind. T in K, t = T - 293.15, Tr = T / criticalTemperature.
 *
 *   polynomial   c0 + c1 t + c2 t^2 ...
 *   antoine      10^(c0 - c1 / (T + c2))
 *   saturation   c0 exp((c1 x + c2 x^1.5 + c3 x^3 + c4 x^3.5 + c5 x^4 + c6 x^7.5) / Tr), x = 1 - Tr
 *   watson       c0 (1 - Tr)^(c1 + c2 Tr + c3 Tr^2)
 *   kell         (c0 + c1 s + ... + c5 s^5) / (1 + c6 s), s in C
 *   log-inverse  exp(c0 + c1 / T + c2 ln T + c3 / T^2)
 */
export type TemperatureCurve = {
  readonly form: 'polynomial' | 'antoine' | 'saturation' | 'watson' | 'kell' | 'log-inverse';
  readonly coefficients: readonly number[];
  /** [K]; used by the forms in Tr. */
  readonly criticalTemperature: number;
  /** [K] */
  readonly valid: { readonly from: number; readonly to: number };
  /** Largest known relative deviation from the published values inside the range. */
  readonly worstError: number;
  readonly source: string;
};

function horner(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (let i = coefficients.length - 1; i >= 0; i--) sum = sum * x + (coefficients[i] ?? 0);
  return sum;
}

const saturationPowers = [1, 1.5, 3, 3.5, 4, 7.5];

/** The bare formula, for this folder alone: callers must have checked the range. */
export function curveAt(curve: TemperatureCurve, temperature: number): number {
  const { coefficients, criticalTemperature } = curve;
  const [c0 = 0, c1 = 0, c2 = 0, c3 = 0] = coefficients;
  const reduced = temperature / criticalTemperature;
  switch (curve.form) {
    case 'polynomial':
      return horner(coefficients, temperature - 293.15);
    case 'antoine':
      return 10 ** (c0 - c1 / (temperature + c2));
    case 'saturation': {
      let sum = 0;
      for (const [i, power] of saturationPowers.entries())
        sum += (coefficients[i + 1] ?? 0) * (1 - reduced) ** power;
      return c0 * Math.exp(sum / reduced);
    }
    case 'watson':
      return c0 * (1 - reduced) ** (c1 + c2 * reduced + c3 * reduced * reduced);
    case 'kell': {
      const s = temperature - 273.15;
      return horner(coefficients.slice(0, 6), s) / (1 + (coefficients[6] ?? 0) * s);
    }
    case 'log-inverse':
      return Math.exp(c0 + c1 / temperature + c2 * Math.log(temperature) + c3 / (temperature * temperature));
  }
}

/**
 * A property at a temperature.
 *
 * @param temperature  [K], scalar
 * Errors: fluids/temperature-outside, naming the range of the published data.
 */
export function curveValue(
  curve: TemperatureCurve,
  property: TemperatureProperty,
  temperature: number,
): Result<number> {
  const { from, to } = curve.valid;
  // A hair of slack, so that 60 C typed in F is still 60 C.
  if (!(temperature >= from - 1e-6 && temperature <= to + 1e-6))
    return fail({ code: 'fluids/temperature-outside', facts: { property, temperature, from, to } });
  return ok(curveAt(curve, temperature));
}
