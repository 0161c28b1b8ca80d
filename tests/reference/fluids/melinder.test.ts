import { describe, expect, it } from 'vitest';
import {
  type AlcoholId,
  airDemand,
  mixByMass,
  mixDensity,
  mixHeatCapacity,
  mixLatentHeat,
  mixViscosity,
} from '../../../core/fluids/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { celsius } from '../../../core/units/index.ts';

/**
 * Aqueous alcohols away from 20 C. Source: Melinder, Properties of Secondary Working Fluids for Indirect Systems,
 * as evaluated by CoolProp 8.0.0 (fluids MMA and MEA). Tolerances are those the docstrings promise: 1 kg/m^3,
 * 4 % of heat capacity, 5 % of viscosity.
 */
const points: readonly [AlcoholId, number, number, number, number, number][] = [
  ['methanol', 0.2, 0, 972.52, 4068, 3.23],
  ['methanol', 0.3, 20, 951.48, 3986, 1.789],
  ['methanol', 0.4, 40, 922.27, 3873, 1.068],
  ['methanol', 0.5, 0, 928.64, 3447, 3.326],
  ['methanol', 0.6, 30, 887.01, 3437, 1.242],
  ['ethanol', 0.3, 10, 959.79, 4193, 4.053],
  ['ethanol', 0.4, 0, 949.43, 3893, 7.083],
  ['ethanol', 0.4, 40, 920.26, 4120, 1.457],
  ['ethanol', 0.5, 20, 913.57, 3824, 2.859],
  ['ethanol', 0.6, 30, 882.79, 3632, 1.944],
];

describe('aqueous alcohol away from 20 C (Melinder)', () => {
  it.each(points)('%s %d at %d C', (id, share, t, density, heatCapacity, viscosity_mPa_s) => {
    const mix = unwrap(mixByMass({ [id]: share }));
    const at = celsius(t);
    expect(Math.abs(unwrap(mixDensity(mix, at)) - density)).toBeLessThan(1);
    expect(Math.abs(unwrap(mixHeatCapacity(mix, at)) / heatCapacity - 1)).toBeLessThan(0.04);
    expect(Math.abs(unwrap(mixViscosity(mix, at)) / (viscosity_mPa_s * 1e-3) - 1)).toBeLessThan(0.05);
  });
});

describe('what the docstrings promise', () => {
  it('44.2 % methanol by mass takes 1 877 kJ/kg at 25 C, weighed from the CRC values within 1 %', () => {
    const mix = unwrap(mixByMass({ methanol: 0.442 }));
    const byHand = 0.442 * 1168.2e3 + 0.558 * 2441.3e3;
    expect(Math.abs(unwrap(mixLatentHeat(mix, celsius(25))) / byHand - 1)).toBeLessThan(0.01);
    expect(byHand / 1877e3).toBeCloseTo(1, 2);
  });

  it('1 kg of petrol with 0.075 kg of methanol takes 15.08 kg of air', () => {
    expect(airDemand({ petrol: 1, methanol: 0.075 })).toBeCloseTo(15.08, 1);
  });
});
