import { type Mix, type PetrolBlend, stoichiometricAirFuel, substances } from '../fluids/index.ts';
import { type Note, ok, type Result } from '../result/index.ts';
import type { Explanation } from '../units/index.ts';
import {
  type BestPowerRanges,
  bestPowerLambda,
  type DemandShares,
  explainLambdaCost,
  lambdaCost,
  type PowerCost,
  textbookBestPower,
} from './best-power.ts';
import { type BlendDemand, blendDemand, explainBlend } from './blend-demand.ts';
import { type Fuelling, type FuellingAnswer, fuellingAnswer } from './fuelling.ts';
import { gaugeShows, petrolScale } from './gauge.ts';

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
 *   target = clamp(middle of best power of the blend, at most practice and leanest, at least the present one)
 *
 * The target moves towards best power because the spray now holds knock, for which a rich mixture was the price;
 * it is a step like any other and comes last.
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
    const shifted = point.fluidFlow > 0 ? Math.min(best, practiceTarget, question.leanest) : question.lambda;
    const target = Math.max(question.lambda, shifted);
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
    );
  }
  notes.push({ code: 'mixture/best-power-from-memory', facts: {} });
  notes.push({ code: 'mixture/lean-breaks-engines', facts: { leanest: question.leanest } });
  return ok({ rows, scale, notes, explanations });
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
