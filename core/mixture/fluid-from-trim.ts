import type { Mix } from '../fluids/index.ts';
import { fail, type Note, ok, type Problem, type Result } from '../result/index.ts';
import type { Explanation } from '../units/index.ts';
import { fluidAirDemand } from './blend-demand.ts';

/** A measured number with half its 95 % interval. */
export type Measured = { readonly value: number; readonly half: number };

export type TrimQuestion = {
  readonly mix: Mix;
  /** Stoichiometric air/fuel ratio of the petrol. */
  readonly petrolAirFuel: number;
  /** Petrol before the spray came on [kg/s]. */
  readonly petrolFlow: Measured;
  /**
   * Change of petrol after over before, as a share: fuel trim after less before, or injector time open after over
   * before less 1. A duty has its dead time taken off first. A cut is negative.
   */
  readonly change: Measured;
  /** After over before; 1 where it was held. */
  readonly lambdaRatio: Measured;
  /** Air after over before; cooling by the spray brings up to 2 % more. */
  readonly airRatio: Measured;
  /** What the plan sends at this state [kg/s]; null where there is none. */
  readonly planned: number | null;
};

export const arrivals = ['clogged', 'matched', 'oversize', 'undecided'] as const;
export type Arrival = (typeof arrivals)[number];

export type FluidFromTrim = {
  /** Fluid that arrived [kg/s], with its 95 % interval; below zero where noise says so. */
  readonly fluidFlow: number;
  readonly interval95: readonly [number, number];
  /** Over the planned flow; null without a plan. */
  readonly ratio: { readonly value: number; readonly low: number; readonly high: number } | null;
  readonly arrival: Arrival | null;
  readonly notes: readonly Note[];
  readonly explanation: Explanation;
};

/** Planned against arrived within this is matched (common practice over a tank). */
const matchedWithin = 0.15;

/**
 * Fluid that arrived, from what the petrol had to give way.
 *
 *   m_fluid = m_petrol AFR_petrol (A lambda_0 / lambda_1 - (1 + c)) / sum w_i AFR_i
 *
 * Uncertainty of the four measured numbers adds by squares.
 *
 * Valid:  steady full load, before and after at one engine speed and boost; alcohol in the fluid. Under 30 % alcohol
 *         the interval soon swallows the answer.
 * Errors: mixture/no-alcohol-to-see, mixture/trim-outside, mixture/lambda-outside.
 * Source: element balance solved for the fluid; JCGM 100:2008, 5.1.2, for the interval.
 * Check:  17.3 g/s of petrol cut by 3.22 % at one lambda is 2.6 g/s of 50 mass % methanol.
 */
export function fluidFromTrim(question: TrimQuestion): Result<FluidFromTrim> {
  const { petrolFlow, change, lambdaRatio, airRatio, planned } = question;
  const problems: Problem[] = [];
  const perFluid = fluidAirDemand(question.mix);
  if (!(perFluid > 0)) problems.push({ code: 'mixture/no-alcohol-to-see', facts: {} });
  if (!(change.value > -0.9 && change.value < 0.9))
    problems.push({ code: 'mixture/trim-outside', facts: { trim: change.value } });
  if (!(lambdaRatio.value > 0.5 && lambdaRatio.value < 2))
    problems.push({ code: 'mixture/lambda-outside', facts: { lambda: lambdaRatio.value } });
  const [first, ...rest] = problems;
  if (first) return fail(first, ...rest);
  const scale = question.petrolAirFuel / perFluid;
  const gap = airRatio.value / lambdaRatio.value - (1 + change.value);
  const fluidFlow = petrolFlow.value * scale * gap;
  const half = Math.hypot(
    petrolFlow.half * scale * gap,
    petrolFlow.value * scale * change.half,
    (petrolFlow.value * scale * airRatio.half) / lambdaRatio.value,
    (petrolFlow.value * scale * airRatio.value * lambdaRatio.half) / lambdaRatio.value ** 2,
  );
  const interval95 = [fluidFlow - half, fluidFlow + half] as const;
  const ratio =
    planned !== null && planned > 0
      ? { value: fluidFlow / planned, low: interval95[0] / planned, high: interval95[1] / planned }
      : null;
  const arrival = ratio ? arrivalOf(ratio) : null;
  const notes: Note[] =
    ratio && arrival
      ? [
          {
            code: `mixture/arrived-${arrival}`,
            facts: { ratio: ratio.value, low: ratio.low, high: ratio.high },
          } as Note,
        ]
      : [];
  return ok({
    fluidFlow,
    interval95,
    ratio,
    arrival,
    notes,
    explanation: {
      id: 'mixture/fluid-from-trim',
      formula: 'm_fluid = m_petrol AFR_petrol (A l0 / l1 - (1 + c)) / sum w_i AFR_i',
      tex: String.raw`\dot m_f=\dot m_p\,\frac{A_p}{\sum w_iA_i}\left(a\frac{\lambda_0}{\lambda_1}-(1+c)\right)`,
      inputs: [
        { symbol: 'm_petrol', value: petrolFlow.value, kind: 'massFlow' },
        { symbol: 'c', value: change.value, kind: 'share' },
        { symbol: 'l1 / l0', value: lambdaRatio.value, kind: 'number' },
        { symbol: 'A', value: airRatio.value, kind: 'number' },
      ],
      source: 'element balance; interval after JCGM 100:2008, 5.1.2',
      validRange: [{ symbol: 'c', from: -0.3, to: 0.1, kind: 'share' }],
    },
  });
}

function arrivalOf(ratio: { readonly low: number; readonly high: number }): Arrival {
  if (ratio.high < 1 - matchedWithin) return 'clogged';
  if (ratio.low > 1 + matchedWithin) return 'oversize';
  return ratio.low >= 1 - matchedWithin && ratio.high <= 1 + matchedWithin ? 'matched' : 'undecided';
}
