import { type Mix, type PetrolBlend, stoichiometricAirFuel, substances } from '../fluids/index.ts';
import { type Note, ok, type Result } from '../result/index.ts';
import type { Explanation } from '../units/index.ts';
import {
  type BestPowerRanges,
  bestPowerLambda,
  type DemandShares,
  explainBestPower,
  explainLambdaCost,
  lambdaCost,
  type PowerCost,
  textbookBestPower,
} from './best-power.ts';
import { type BlendDemand, blendDemand, explainBlend } from './blend-demand.ts';
import { explainFuelling, type Fuelling, type FuellingAnswer, fuellingAnswer } from './fuelling.ts';
import { explainGauge, gaugeShows, petrolScale } from './gauge.ts';

/** One state of the engine that the mixture is asked for. Flows in kg/s. */
export type MixturePoint = {
  readonly boost: number;
  readonly engineSpeed_rad_s: number;
  readonly airFlow: number;
  readonly fluidFlow: number;
};

export type MixtureQuestion = {
  readonly petrol: PetrolBlend;
  readonly mix: Mix;
  readonly fuelling: Fuelling;
  /** Target that the engine runs now, without spray. */
  readonly lambda: number;
  /** Leanest that the user allows at full load. */
  readonly leanest: number;
  readonly scale?: number;
  /** Fluid over petrol by mass from which on the fluid stands for all of the enrichment; practice where left out. */
  readonly fullFeed?: number;
  readonly ranges?: BestPowerRanges;
  readonly points: readonly MixturePoint[];
};

export type MixtureRow = MixturePoint & {
  readonly demand: BlendDemand;
  readonly fuelling: FuellingAnswer;
  readonly bestPower: readonly [number, number];
  /** The target with the blend: between what it was and best power, never past `leanest`. */
  readonly target: number;
  readonly shift: number;
  /** What the gauge shows at that target, and what all that burns really is at. */
  readonly gauge: number;
  readonly airFuel: number;
  /** What staying at the present target costs against best power. */
  readonly cost: PowerCost;
};

export type MixturePlan = {
  readonly rows: readonly MixtureRow[];
  readonly scale: number;
  readonly notes: readonly Note[];
  readonly explanations: readonly Explanation[];
};

/** Target under boost on petrol as practice has it, 12.5 on the petrol scale: past it leaner is not sought. */
export const practiceTarget = 12.5 / petrolScale;
/** Below this no two targets are told apart by power on a road or most dynos (field repeatability 0.8 to 2 %). */
const toldApart = 0.01;

/** Fluid over fuel that practice calls full (common practice: 15 %, window 10 to 25 %). */
export const practiceFullFeed = 0.15;

/**
 * How much of the enrichment that held knock the fluid stands for: nothing without fluid, all from `fullFeed` on.
 *
 *   w = min(1, (m_fluid / m_petrol) / r_full)
 *
 * Source: that it grows in a straight line with the feed is an assumption (common practice knows both ends only).
 */
export function shiftWeight(feed: number, fullFeed: number = practiceFullFeed): number {
  return Math.min(1, Math.max(0, feed) / fullFeed);
}

function demandShares(mix: Mix, alcoholShare: number): DemandShares {
  const methanol = mix.massShares.methanol * stoichiometricAirFuel(substances.methanol.elements);
  const ethanol = mix.massShares.ethanol * stoichiometricAirFuel(substances.ethanol.elements);
  const whole = methanol + ethanol;
  if (whole === 0) return { petrol: 1, methanol: 0, ethanol: 0 };
  return {
    petrol: 1 - alcoholShare,
    methanol: (alcoholShare * methanol) / whole,
    ethanol: (alcoholShare * ethanol) / whole,
  };
}

/**
 * What the alcohol asks of the mixture over boost: what the loop does, what the table needs, what the gauge shows,
 * and where the target may go.
 *
 *   target = lambda + w max(0, min(middle of best power of the blend, practice, leanest) - lambda)
 *
 * The target moves towards best power because the spray now holds knock, for which a rich mixture was the price: the
 * more fluid, the more of that price falls away (shiftWeight). It is a step like any other and comes last.
 *
 * Errors: those of blendDemand.
 */
export function mixturePlan(question: MixtureQuestion): Result<MixturePlan> {
  const scale = question.scale ?? petrolScale;
  const ranges = question.ranges ?? textbookBestPower;
  const rows: MixtureRow[] = [];
  const explanations: Explanation[] = [];
  for (const point of question.points) {
    const state = { ...point, petrol: question.petrol, mix: question.mix, lambda: question.lambda };
    const now = blendDemand(state);
    if (!now.ok) return now;
    const bestPower = bestPowerLambda(demandShares(question.mix, now.value.alcoholShare), ranges);
    const best = (bestPower[0] + bestPower[1]) / 2;
    const farthest = Math.min(best, practiceTarget, question.leanest);
    const feed = point.fluidFlow / now.value.petrolWithout;
    const weight = shiftWeight(feed, question.fullFeed);
    const target = question.lambda + weight * Math.max(0, farthest - question.lambda);
    const then = blendDemand({ ...state, lambda: target });
    if (!then.ok) return then;
    rows.push({
      ...point,
      demand: then.value,
      fuelling: fuellingAnswer(question.fuelling, target, then.value),
      bestPower,
      target,
      shift: target - question.lambda,
      gauge: gaugeShows(target, scale),
      airFuel: then.value.airFuel,
      cost: lambdaCost(question.lambda, Math.max(best, question.lambda)),
    });
  }
  const last = rows.reduce<MixtureRow | null>(
    (most, row) => (most === null || row.demand.alcoholShare > most.demand.alcoholShare ? row : most),
    null,
  );
  const notes: Note[] = [];
  if (last) {
    notes.push(...last.fuelling.notes);
    notes.push({
      code: 'mixture/gauge-on-petrol-scale',
      facts: { lambda: last.target, shown: last.gauge, scale, airFuel: last.airFuel },
    });
    notes.push(...costNotes(question.lambda, last));
    explanations.push(
      explainBlend({ ...last, petrol: question.petrol, mix: question.mix, lambda: last.target }, last.demand),
      explainLambdaCost(question.lambda, (last.bestPower[0] + last.bestPower[1]) / 2),
      explainShift(question, last),
      explainBestPower(demandShares(question.mix, last.demand.alcoholShare), ranges),
      explainGauge(last.target, scale),
      explainFuelling(question.fuelling, last.target, last.demand),
    );
  }
  notes.push({ code: 'mixture/best-power-from-memory', facts: {} });
  notes.push({ code: 'mixture/lean-breaks-engines', facts: { leanest: question.leanest } });
  return ok({ rows, scale, notes, explanations });
}

function explainShift(question: MixtureQuestion, row: MixtureRow): Explanation {
  return {
    id: 'mixture/target-shift',
    formula: 'target = l + w max(0, min(l_best, l_practice, l_leanest) - l),   w = min(1, r / r_full)',
    tex: String.raw`\lambda^\ast=\lambda+w\max\left(0,\min(\lambda_\mathrm{best},\lambda_\mathrm{practice},\lambda_\mathrm{leanest})-\lambda\right),\quad w=\min(1,r/r_\mathrm{full})`,
    inputs: [
      { symbol: 'l', value: question.lambda, kind: 'lambda' },
      { symbol: 'l_best', value: (row.bestPower[0] + row.bestPower[1]) / 2, kind: 'lambda' },
      { symbol: 'l_practice', value: practiceTarget, kind: 'lambda' },
      { symbol: 'l_leanest', value: question.leanest, kind: 'lambda' },
      { symbol: 'r', value: row.fluidFlow / row.demand.petrolWithout, kind: 'share' },
      { symbol: 'r_full', value: question.fullFeed ?? practiceFullFeed, kind: 'share' },
    ],
    source:
      'common practice: the spray takes over from a rich mixture as it comes in; a straight line between is assumed',
    validRange: [{ symbol: 'r', from: 0, to: 0.3, kind: 'share' }],
  };
}

function costNotes(lambda: number, row: MixtureRow): Note[] {
  if (row.cost.expected >= toldApart)
    return [{ code: 'mixture/rich-costs', facts: { lambda, low: row.cost.low, high: row.cost.high } }];
  return row.shift > 0
    ? [
        {
          code: 'mixture/targets-not-told-apart',
          facts: { from: lambda, to: row.target, cost: row.cost.expected },
        },
      ]
    : [];
}
