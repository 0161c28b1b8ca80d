import { fail, ok, type Problem, type Result } from '../result/index.ts';
import type { Explanation } from '../units/index.ts';
import type { ChargeAir } from './charge-air.ts';

/**
 * Charge behind a cooler.
 *
 *   T2 = T1 - e (T1 - T_c),   p2 = p1 - loss
 *
 * @param effectiveness  share of the largest possible drop, 0 to 1
 * @param coolant        what cools: ambient air or the water of a second circuit [K]
 * @param loss           pressure lost in it [Pa]
 *
 * Valid:  heat-capacity rate of the charge below that of the coolant; a car at speed. Heat soak lowers e.
 * Errors: charge/share-outside, charge/loss-above-pressure.
 * Source: definition of heat-exchanger effectiveness.
 * Check:  150 C against 25 C at 0.7 leaves at 62.5 C.
 */
export function cool(
  air: ChargeAir,
  of: { readonly effectiveness: number; readonly coolant: number; readonly loss: number },
): Result<ChargeAir> {
  const problems: Problem[] = [];
  if (!(of.effectiveness >= 0 && of.effectiveness <= 1))
    problems.push({
      code: 'charge/share-outside',
      facts: { what: 'coolerEffectiveness', share: of.effectiveness },
    });
  if (!(of.loss < air.pressure))
    problems.push({ code: 'charge/loss-above-pressure', facts: { loss: of.loss, pressure: air.pressure } });
  const [first, ...rest] = problems;
  if (first) return fail(first, ...rest);
  return ok({
    ...air,
    pressure: air.pressure - of.loss,
    temperature: air.temperature - of.effectiveness * (air.temperature - of.coolant),
  });
}

export function explainCooler(before: ChargeAir, coolant: number, effectiveness: number): Explanation {
  return {
    id: 'charge/cooler',
    formula: 'T2 = T1 - e (T1 - Tc)',
    tex: String.raw`T_2 = T_1 - \varepsilon\,(T_1 - T_\mathrm{c})`,
    inputs: [
      { symbol: 'T1', value: before.temperature, kind: 'temperature' },
      { symbol: 'Tc', value: coolant, kind: 'temperature' },
      { symbol: 'e', value: effectiveness, kind: 'share' },
    ],
    source: 'definition of heat-exchanger effectiveness',
    validRange: [{ symbol: 'e', from: 0, to: 1, kind: 'share' }],
  };
}
