import { airDemand, blendAirFuel, blendOf, type Mix, type PetrolBlend } from '../fluids/index.ts';
import { fail, ok, type Problem, type Result } from '../result/index.ts';
import type { Explanation } from '../units/index.ts';

/** What meets in the chamber at one state of the engine, all masses per second [kg/s]. */
export type BlendState = {
  readonly petrol: PetrolBlend;
  readonly mix: Mix;
  /** Dry air. */
  readonly airFlow: number;
  readonly fluidFlow: number;
  readonly lambda: number;
};

export type BlendDemand = {
  /** Petrol that holds this lambda with the spray, and without it [kg/s]. */
  readonly petrolFlow: number;
  readonly petrolWithout: number;
  /** Share of the fuel's air demand that the alcohol takes: what a loop on lambda cuts, what a table must. */
  readonly alcoholShare: number;
  /** Stoichiometric air/fuel ratio of all that burns. */
  readonly stoichiometric: number;
  /** Air over all that burns, by mass, at this lambda. */
  readonly airFuel: number;
  /** Lambda if the petrol stayed as it was without spray. */
  readonly lambdaUncut: number;
};

/** 1 kg of the fluid takes this much air [kg]; 0 for water. */
export function fluidAirDemand(mix: Mix): number {
  return airDemand(blendOf({}, mix, 1));
}

/**
 * Petrol, alcohol and air at one lambda.
 *
 *   m_petrol AFR_petrol + m_fluid sum w_i AFR_i = m_air / lambda
 *
 * Valid:  lambda 0.6 to 1.3; all alcohol burns in the cycle it arrives in.
 * Errors: mixture/lambda-outside, mixture/air-not-positive, mixture/alcohol-takes-all.
 * Source: element balance, core/fluids/stoichiometry.ts.
 * Check:  15 % fluid over petrol by mass with 50 % methanol takes 3.22 % of the air demand.
 */
export function blendDemand(state: BlendState): Result<BlendDemand> {
  const problems: Problem[] = [];
  if (!(state.lambda >= 0.5 && state.lambda <= 1.5))
    problems.push({ code: 'mixture/lambda-outside', facts: { lambda: state.lambda } });
  if (!(state.airFlow > 0))
    problems.push({ code: 'mixture/air-not-positive', facts: { airFlow: state.airFlow } });
  const [first, ...rest] = problems;
  if (first) return fail(first, ...rest);
  const demand = state.airFlow / state.lambda;
  const alcohol = Math.max(0, state.fluidFlow) * fluidAirDemand(state.mix);
  const alcoholShare = alcohol / demand;
  if (alcoholShare >= 1) return fail({ code: 'mixture/alcohol-takes-all', facts: { share: alcoholShare } });
  const afr = state.petrol.stoichiometricAirFuel;
  const petrolWithout = demand / afr;
  const petrolFlow = (demand - alcohol) / afr;
  const { petrol, ethanol } = state.petrol.parts;
  const blend = blendOf(
    { petrol: petrol * petrolFlow, ethanol: ethanol * petrolFlow },
    state.mix,
    Math.max(0, state.fluidFlow),
  );
  const stoichiometric = blendAirFuel(blend);
  if (!stoichiometric.ok) return stoichiometric;
  return ok({
    petrolFlow,
    petrolWithout,
    alcoholShare,
    stoichiometric: stoichiometric.value,
    airFuel: stoichiometric.value * state.lambda,
    lambdaUncut: state.lambda / (1 + alcoholShare),
  });
}

export function explainBlend(state: BlendState, demand: BlendDemand): Explanation {
  return {
    id: 'mixture/blend',
    formula: 'm_petrol AFR_petrol + m_fluid sum w_i AFR_i = m_air / lambda',
    tex: String.raw`\dot m_p A_p + \dot m_f \textstyle\sum w_i A_i = \dot m_a/\lambda`,
    inputs: [
      { symbol: 'm_air', value: state.airFlow, kind: 'massFlow' },
      { symbol: 'm_fluid', value: state.fluidFlow, kind: 'massFlow' },
      { symbol: 'lambda', value: state.lambda, kind: 'lambda' },
      { symbol: 'AFR_petrol', value: state.petrol.stoichiometricAirFuel, kind: 'number' },
      { symbol: 'share', value: demand.alcoholShare, kind: 'share' },
    ],
    source: 'element balance with dry air of 20.946 % oxygen',
    validRange: [{ symbol: 'lambda', from: 0.6, to: 1.3, kind: 'lambda' }],
  };
}
