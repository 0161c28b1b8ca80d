import { fail, ok, type Result } from '../result/index.ts';
import { celsius } from '../units/index.ts';
import { type Mix, moleShares } from './mix.ts';
import { type AlcoholId, alcoholIds, substanceIds, substances } from './substance.ts';
import { curveAt } from './temperature-curve.ts';

/** Level at 20 C over composition, then what temperature adds. */
const interaction: {
  readonly [A in AlcoholId]: { level: readonly number[]; warming: readonly [number, number] };
} = {
  methanol: { level: [2.70573, 1.5163, 1.80238, 0.759517, -0.654635], warming: [0.149911, 1.6153] },
  ethanol: { level: [2.72132, 2.98931, 2.75341, 2.58087, 2.17226], warming: [-6.14304, 7.2165] },
};

const valid = { from: celsius(-20), to: celsius(60) };

/**
 * Dynamic viscosity of a mix [Pa s]; x mole share of all alcohol, z = 1 - 2 x, q = 1000/T - 1000/293.15.
 *
 *   ln mu = sum x_i ln mu_i + x (1 - x) [ sum A_k z^k + q ((1 + z) B0 + (1 + z)^2 B1) ]
 *
 * Valid:  -20 to 60 C. Within 0.01 mPa s of the CRC Handbook at 20 C (30, 50, 100 %), 5 % of Melinder from 0 to
 *         40 C up to 60 %; above 60 % the level rests on CRC values from memory. Line loss needs no more.
 * Errors: fluids/temperature-outside.
 * Source: form of Grunberg and Nissan (1949), fitted to the CRC Handbook, 102nd ed., and Melinder.
 * Fit:    the script of the interaction terms is lost: they stand as fitted, checked against both sources in
 *         tests/reference/fluids.
 * Check:  methanol 50 % by mass at 20 C gives 1.761 mPa s.
 */
export function mixViscosity(mix: Mix, temperature: number): Result<number> {
  const { from, to } = valid;
  if (!(temperature >= from - 1e-6 && temperature <= to + 1e-6))
    return fail({
      code: 'fluids/temperature-outside',
      facts: { property: 'viscosity', temperature, from, to },
    });
  const moles = moleShares(mix);
  let logarithm = 0;
  for (const id of substanceIds)
    if (moles[id] > 0)
      logarithm += moles[id] * Math.log(curveAt(substances[id].curves.viscosity, temperature));
  const x = moles.methanol + moles.ethanol;
  if (x > 0) {
    const z = 1 - 2 * x;
    const q = 1000 / temperature - 1000 / 293.15;
    for (const id of alcoholIds) {
      const { level, warming } = interaction[id];
      let sum = (1 + z) * q * (warming[0] + (1 + z) * warming[1]);
      for (const [k, coefficient] of level.entries()) sum += coefficient * z ** k;
      logarithm += (moles[id] / x) * x * (1 - x) * sum;
    }
  }
  return ok(Math.exp(logarithm));
}
