import { fail, ok, type Problem, type Result } from '../result/index.ts';
import type { Explanation } from '../units/index.ts';
import {
  type ChargeAir,
  dryAirMolarMass,
  gasConstant,
  heatCapacityPerAir,
  vapourMoles,
} from './charge-air.ts';

/** Ratio of specific heats of air up to 150 C (common practice: 1.40 cold, 1.39 hot). */
export const airExponent = 1.4;

/**
 * Temperature behind a compressor [K].
 *
 *   T2 = T1 (1 + ((p2 / p1)^((k - 1) / k) - 1) / eta)
 *
 * @param of  inlet temperature [K], absolute pressures [Pa], isentropic efficiency 0 to 1, exponent k
 *
 * Valid:  pressure ratio 1 to 5, no heat through the wall.
 * Errors: charge/pressure-not-positive, charge/pressure-ratio-below-one, charge/share-outside.
 * Source: definition of isentropic efficiency.
 * Check:  300 K at ratio 2 and 70 % leaves at 393.86 K.
 */
export function compressorOutlet(of: {
  readonly inletTemperature: number;
  readonly inletPressure: number;
  readonly outletPressure: number;
  readonly efficiency: number;
  readonly exponent?: number;
}): Result<number> {
  const problems: Problem[] = [];
  if (!(of.inletPressure > 0))
    problems.push({ code: 'charge/pressure-not-positive', facts: { pressure: of.inletPressure } });
  else if (!(of.outletPressure >= of.inletPressure))
    problems.push({
      code: 'charge/pressure-ratio-below-one',
      facts: { inlet: of.inletPressure, outlet: of.outletPressure },
    });
  if (!(of.efficiency > 0 && of.efficiency <= 1))
    problems.push({
      code: 'charge/share-outside',
      facts: { what: 'compressorEfficiency', share: of.efficiency },
    });
  const [first, ...rest] = problems;
  if (first) return fail(first, ...rest);
  const k = of.exponent ?? airExponent;
  const isentropicRise = (of.outletPressure / of.inletPressure) ** ((k - 1) / k) - 1;
  return ok(of.inletTemperature * (1 + isentropicRise / of.efficiency));
}

/** Air with its vapours, compressed: vapours lower the exponent, which spray before a compressor profits from. */
export function compress(air: ChargeAir, outletPressure: number, efficiency: number): Result<ChargeAir> {
  const heat = heatCapacityPerAir(air.vapour, air.temperature);
  const gas = gasConstant * (1 / dryAirMolarMass + vapourMoles(air.vapour));
  const temperature = compressorOutlet({
    inletTemperature: air.temperature,
    inletPressure: air.pressure,
    outletPressure,
    efficiency,
    exponent: heat / (heat - gas),
  });
  return temperature.ok
    ? ok({ ...air, pressure: outletPressure, temperature: temperature.value })
    : temperature;
}

/**
 * Work of a compressor per kg of gas [J/kg]: what it takes from the crank or the turbine.
 *
 *   w = c_p (T2 - T1)
 *
 * Check: Rajput example 16.1: 90.5 kW for 735 kW of engine.
 */
export function compressorWork(
  heatCapacity: number,
  inletTemperature: number,
  outletTemperature: number,
): number {
  return heatCapacity * (outletTemperature - inletTemperature);
}

export function explainCompressor(before: ChargeAir, after: ChargeAir, efficiency: number): Explanation {
  return {
    id: 'charge/compressor',
    formula: 'T2 = T1 (1 + ((p2 / p1)^((k - 1) / k) - 1) / eta)',
    tex: String.raw`T_2 = T_1\left(1+\frac{(p_2/p_1)^{(\kappa-1)/\kappa}-1}{\eta}\right)`,
    inputs: [
      { symbol: 'T1', value: before.temperature, kind: 'temperature' },
      { symbol: 'p1', value: before.pressure, kind: 'pressure' },
      { symbol: 'p2', value: after.pressure, kind: 'pressure' },
      { symbol: 'eta', value: efficiency, kind: 'share' },
    ],
    source: 'definition of isentropic efficiency; Gupta, Fundamentals of Internal Combustion Engines, ch. 15',
    validRange: [{ symbol: 'p2 / p1', from: 1, to: 5, kind: 'number' }],
  };
}
