import { chargeAlong } from '../charge/index.ts';
import { type Plan, planOf, type Setup } from '../injection/index.ts';
import { type Note, ok, type Result } from '../result/index.ts';
import type { Explanation } from '../units/index.ts';
import { type BoostCap, boostCaps } from './caps.ts';
import { type ChargeModel, chargeModel, sameDay, type Today } from './charge-of-setup.ts';
import { coveredOf, type SparkTable } from './covered-cells.ts';
import { type ExplainedAt, explainDuty, explainManifold, explainPump } from './explain-step.ts';
import { fuelPumpAt, fuelPumpDelivery } from './fuel-pump.ts';
import { type GateContext, gatesOf } from './gate.ts';
import { type LadderHeadroom, ladderHeadroom, type Range, sparkLeft } from './headroom.ts';
import { injectorDutyAt } from './injector-duty.ts';
import type { LadderLimits } from './limits.ts';
import { nothingMeasured } from './measured.ts';
import { mixtureOfSetup } from './mixture-of-setup.ts';
import { powerAfter, times } from './predicted-power.ts';
import { type LadderPlace, type Routine, routines } from './routine.ts';
import { type LadderEntry, type Standing, standingOf } from './standing.ts';
import type { LadderStep, StepKind } from './step.ts';

const degree = Math.PI / 180;

export type LadderInput = {
  readonly setup: Setup;
  readonly limits: LadderLimits;
  /** What was driven so far, the baseline first; empty before the first pull. */
  readonly ledger: readonly LadderEntry[];
  readonly place: LadderPlace;
  /** The air of the pulls to come; the setup's air is that of the shown point. */
  readonly today?: Today;
  readonly sizes?: Partial<StepSizes>;
  /** Where there is one, a spark step names its cells. */
  readonly sparkTable?: SparkTable | null;
};

/** How big steps are; half of it near a limit. */
export type StepSizes = {
  /** [Pa] */
  readonly boost: number;
  readonly spark_rad: number;
  readonly lambda: number;
  /** Spark is not planned further than this over the baseline's. */
  readonly mostSpark_rad: number;
};

/** 0.1 bar and 1.0 degree, half near the limit (field practice); four degrees in all, as the last ones bring nothing. */
export const usualSizes: StepSizes = {
  boost: 10e3,
  spark_rad: degree,
  lambda: 0.02,
  mostSpark_rad: 4 * degree,
};

export type Ladder = {
  readonly plan: Plan;
  readonly standing: Standing;
  readonly steps: readonly LadderStep[];
  readonly headroom: LadderHeadroom | null;
  /** Every end of the climb of boost, lowest first. */
  readonly caps: readonly BoostCap[];
  readonly routine: Routine;
  /** Why it ends where it ends, and what rests on practice. */
  readonly notes: readonly Note[];
  readonly explanations: readonly Explanation[];
};

/** A clear loss by spray alone is over-feed; less is its price (common practice: nothing, or a little less). */
export const overFeedLoss = 0.02;

/** The spray was driven, kept, its flow not refused by a gate, and no clear loss came of it. */
export function isSprayProven(standing: Standing): boolean {
  const { spray } = standing;
  if (!spray) return false;
  return !(spray.verdict?.kind === 'loss' && (spray.verdict.effectShare ?? 0) < -overFeedLoss);
}

/**
 * The ordered single changes from where the ledger stands to the target: prove the spray, boost, spark in the loaded
 * cells, mixture; an earlier entry again after every few. Call it again after each verdict: what was measured takes the
 * place of what was predicted.
 *
 * Errors: those of planOf (a pump weaker than boost, no peak boost, ...), chargeModel and knockHeadroom.
 * Source: order, sizes and gates: common practice; predictions: core/charge, core/mixture, predicted-power.ts.
 */
export function planLadder(input: LadderInput): Result<Ladder> {
  const { setup, limits } = input;
  const sizes: StepSizes = { ...usualSizes, ...input.sizes };
  const routine = routines[input.place];
  const plan = planOf(setup);
  if (!plan.ok) return plan;
  const shown = chargeModel(setup, plan.value, sameDay);
  if (!shown.ok) return shown;
  const model = chargeModel(setup, plan.value, input.today ?? sameDay);
  if (!model.ok) return model;
  const standing = standingOf(
    input.ledger,
    { boost: startBoost(input, plan.value), lambda: model.value.lambda },
    (isSprayOn, boost) => gateContext(input, plan.value, model.value, isSprayOn, boost),
  );
  const headroom = ladderHeadroom(setup, plan.value, shown.value, model.value, standing);
  if (!headroom.ok) return headroom;
  const mixture = mixtureOfSetup(setup, plan.value, limits.leanestLambda, standing.lambda, model.value);
  if (!mixture.ok) return mixture;
  const peakRow = mixture.value.plan.rows[mixture.value.plan.rows.length - 1];
  if (!peakRow) throw new Error('a mixture plan has rows');
  const alcoholShare = setup.engine.fuelling === 'open-loop' ? 0 : peakRow.demand.alcoholShare;
  const caps = boostCaps({
    setup,
    plan: plan.value,
    model: model.value,
    limits,
    standing,
    headroom: headroom.value,
    alcoholShare,
    target: plan.value.path.peakBoost,
    boostStep: sizes.boost,
  });
  const builder = stepBuilder({
    input,
    sizes,
    plan: plan.value,
    model: model.value,
    standing,
    headroom: headroom.value,
    alcoholShare,
    routine,
  });
  const notes: Note[] = [];
  if (standing.baseline === null || standing.baseline.measured.pulls === 0) builder.baseline();
  if (!isSprayProven(standing)) builder.spray();
  const top = climb(builder, caps, headroom.value, standing, sizes);
  notes.push(endNote(top));
  notes.push(...takeSpark(builder, top.boost, headroom.value, standing, sizes));
  const goal = settable(peakRow.target, standing.lambda);
  if (Math.abs(goal - standing.lambda) >= sizes.lambda / 2)
    shiftMixture(builder, goal, (peakRow.bestPower[0] + peakRow.bestPower[1]) / 2, standing, sizes);
  if (headroom.value === null) notes.push({ code: 'ladder/no-shown-point', facts: {} });
  else notes.push(...headroom.value.notes);
  notes.push(...model.value.notes, ...mixture.value.notes);
  return ok({
    plan: plan.value,
    standing,
    steps: builder.steps,
    headroom: headroom.value,
    caps,
    routine,
    notes: unique(notes),
    explanations: [
      ...(headroom.value?.explanations ?? []),
      ...plan.value.explanations,
      ...mixture.value.plan.explanations,
      explainPower(plan.value, setup, null),
    ],
  });
}

function unique(notes: readonly Note[]): Note[] {
  return [...new Map(notes.map((n) => [JSON.stringify(n), n])).values()];
}

/** Boost of the baseline: measured, else the one shown without knock, else the target without its last step. */
function startBoost(input: LadderInput, plan: Plan): number {
  const first = input.ledger.find((e) => e.kind === 'boost' && e.from !== null);
  if (first?.from) return first.from;
  const shown = input.setup.engine.soundBoost_kPa;
  if (shown !== null) return shown * 1e3;
  const baseline = input.ledger.find((e) => e.kind === 'baseline');
  return baseline?.measured.boost ?? Math.max(0, plan.path.peakBoost - usualSizes.boost);
}

/** What the gates of an entry at a boost are held against. */
export function gateContext(
  input: LadderInput,
  plan: Plan,
  model: ChargeModel,
  isSprayOn: boolean,
  boost: number,
): GateContext {
  const { engine, fluidSystem } = input.setup;
  const planned = model.fluidFlow(boost, plan.path.peakSpeed_rad_s);
  return {
    limits: input.limits,
    ambientTemperature: model.ambientTemperature,
    ambientPressure: model.ambientPressure,
    mapSensor: engine.mapSensor_kPa === null ? null : engine.mapSensor_kPa * 1e3,
    fuelPump: fuelPumpDelivery(input.setup),
    isSprayOn,
    plannedFlow: planned > 0 ? planned : null,
    reserveShare:
      fluidSystem.tank_L === null || fluidSystem.reserve_L === null
        ? null
        : fluidSystem.reserve_L / fluidSystem.tank_L,
  };
}

type Building = {
  readonly input: LadderInput;
  readonly sizes: StepSizes;
  readonly plan: Plan;
  readonly model: ChargeModel;
  readonly standing: Standing;
  readonly headroom: LadderHeadroom | null;
  readonly alcoholShare: number;
  readonly routine: Routine;
};

type State = { boost: number; spark_rad: number; lambda: number; isSprayOn: boolean; power: Range | null };
type Builder = ReturnType<typeof stepBuilder>;

/** Makes steps one after the other, each from where the one before leaves the engine. */
function stepBuilder(of: Building) {
  const { input, plan, model, standing, routine } = of;
  const steps: LadderStep[] = [];
  const now: State = {
    boost: standing.boost,
    spark_rad: standing.spark_rad,
    lambda: standing.lambda,
    isSprayOn: standing.isSprayOn,
    power: powerNow(of),
  };
  let sinceReturn = standing.sinceReturn;
  const speed = plan.path.peakSpeed_rad_s;

  const push = (
    kind: StepKind,
    change: Pick<LadderStep, 'from' | 'to' | 'isHalf' | 'cells' | 'reasons'>,
    gain: Range,
  ) => {
    if (kind !== 'baseline' && kind !== 'nothing' && sinceReturn >= routine.returnAfter) {
      sinceReturn = 0;
      push(
        'nothing',
        {
          from: null,
          to: null,
          isHalf: false,
          cells: null,
          reasons: [{ code: 'ladder/drive-again', facts: { after: routine.returnAfter } }],
        },
        powerAfter.nothing(),
      );
    }
    now.power = now.power && times(now.power, gain);
    const at: ExplainedAt = {
      setup: input.setup,
      plan,
      ambientPressure: model.ambientPressure,
      boost: now.boost,
      alcoholShare: now.isSprayOn ? of.alcoholShare : 0,
    };
    const duty = injectorDutyAt(at.setup, plan, at.ambientPressure, at.boost, at.alcoholShare);
    const pump = fuelPumpAt(at.setup, plan, at.boost, at.alcoholShare);
    const wet = chargeAlong(model.path(now.boost, speed, now.isSprayOn));
    const dry = chargeAlong(model.path(now.boost, speed, false));
    const intake: Range | null =
      wet.ok && dry.ok ? [wet.value.port.air.temperature, dry.value.port.air.temperature] : null;
    const manifoldPressure = model.ambientPressure + now.boost;
    const fluidFlow = now.isSprayOn ? model.fluidFlow(now.boost, speed) : 0;
    const gates = gatesOf(nothingMeasured, gateContext(input, plan, model, now.isSprayOn, now.boost), {
      intake,
      injectorDuty: duty === null ? null : [duty, duty],
      fuelPump: pump === null ? null : [pump, pump],
      manifoldPressure: [manifoldPressure, manifoldPressure],
      fluidFlow: now.isSprayOn ? [fluidFlow, fluidFlow] : null,
    });
    steps.push({
      n: steps.length + 1,
      kind,
      ...change,
      predicted: {
        power: now.power,
        knockHeadroom_rad:
          of.headroom && now.isSprayOn ? sparkLeft(of.headroom, now.boost, now.spark_rad) : null,
        fluidFlow,
        injectorDuty: duty,
        intake: intake?.[0] ?? Number.NaN,
        manifoldPressure,
      },
      explanations: [
        explainPower(plan, input.setup, now.power),
        explainDuty(at),
        explainPump(at),
        explainManifold(model.ambientPressure, now.boost),
        ...(wet.ok ? wet.value.explanations : []),
      ].filter((e) => e !== null),
      gates,
      ifClosed: gates[0]?.ifClosed ?? 'back-to-last-good',
      cautions: cautionsOf(kind, input, plan),
    });
    if (kind !== 'baseline' && kind !== 'nothing') sinceReturn++;
  };

  const inTable = input.sparkTable
    ? { inTable: coveredOf(input.sparkTable, plan, model.ambientPressure) }
    : {};
  const loadedCells = () => {
    const { start, full } = plan.driven;
    const from = (start + full) / 2;
    const speeds = plan.path.engineSpeed_rad_s.filter(
      (_, i) => (plan.path.boost[i] ?? 0) >= Math.min(from, now.boost),
    );
    return {
      boost: [from, Math.max(from, now.boost)] as const,
      engineSpeed_rad_s: [speeds[0] ?? 0, speeds[speeds.length - 1] ?? 0] as const,
    };
  };

  return {
    steps,
    now,
    baseline: () =>
      push(
        'baseline',
        {
          from: null,
          to: null,
          isHalf: false,
          cells: null,
          reasons: [{ code: 'ladder/baseline-first', facts: { pulls: routine.pulls } }],
        },
        powerAfter.nothing(),
      ),
    spray: () => {
      now.isSprayOn = true;
      push(
        'spray',
        {
          from: null,
          to: plan.driven.start,
          isHalf: false,
          cells: null,
          reasons: [
            {
              code: 'ladder/prove-the-spray',
              facts: { start: plan.driven.start, full: plan.driven.full, loss: overFeedLoss },
            },
          ],
        },
        powerAfter.spray(),
      );
    },
    boost: (to: number, isHalf: boolean, reason: Note) => {
      const from = now.boost;
      now.boost = to;
      push(
        'boost',
        { from, to, isHalf, cells: null, reasons: [reason] },
        powerAfter.boost(model.ambientPressure + from, to - from),
      );
    },
    spark: (more: number, isHalf: boolean, reason: Note) => {
      const from = now.spark_rad;
      now.spark_rad = from + more;
      push(
        'spark',
        { from, to: now.spark_rad, isHalf, cells: { ...loadedCells(), ...inTable }, reasons: [reason] },
        powerAfter.spark(from, more),
      );
    },
    mixture: (to: number, best: number) => {
      const from = now.lambda;
      now.lambda = to;
      push(
        'mixture',
        {
          from,
          to,
          isHalf: false,
          cells: loadedCells(),
          reasons: [{ code: 'ladder/mixture-last', facts: { from, to } }],
        },
        powerAfter.mixture(from, to, Math.max(best, from, to)),
      );
    },
  };
}

/** Crank power where the ledger stands; null where the setup knows none. */
function powerNow(of: Building): Range | null {
  const { plan, model, standing, input } = of;
  const { engine } = input.setup;
  const best = Math.max(0, ...engine.powerCurve.map((p) => p.power_kW));
  const target = engine.peakPower_kW ?? (best > 0 ? best : null);
  if (target === null) return null;
  const start = startBoost(input, plan);
  const scale = (model.ambientPressure + start) / (model.ambientPressure + plan.path.peakBoost);
  const base = target * 1e3 * scale;
  // A stated crank power is known to 2 % at best (common practice).
  return times([0.98 * base, 1.02 * base], standing.powerRatio);
}

function explainPower(plan: Plan, setup: Setup, after: Range | null): Explanation {
  return {
    id: 'ladder/predicted-power',
    formula: 'P = P_target (p_a + b) / (p_a + b_target) x measured effects x (1 + gain of each step)',
    inputs: [
      { symbol: 'P_target', value: (setup.engine.peakPower_kW ?? Number.NaN) * 1e3, kind: 'power' },
      { symbol: 'b_target', value: plan.path.peakBoost, kind: 'boost' },
      ...(after
        ? ([
            { symbol: 'P, low', value: after[0], kind: 'power' },
            { symbol: 'P, high', value: after[1], kind: 'power' },
          ] as const)
        : []),
    ],
    source:
      'boost: 0.6 to 1.1 of the rise in absolute pressure; spark: 0.5 to 1.5 % per degree at first (common practice)',
    validRange: [{ symbol: 'b', from: 0, to: 250e3, kind: 'boost' }],
  };
}

function cautionsOf(kind: StepKind, input: LadderInput, plan: Plan): Note[] {
  const notes: Note[] = [];
  if (kind === 'nothing') return notes;
  if (kind === 'baseline' || kind === 'spray') {
    const open = plan.fit.items.filter((i) => i.state === 'fix' || i.state === 'unanswered').length;
    if (open > 0) notes.push({ code: 'ladder/fit-open', facts: { count: open } });
    notes.push({
      code: input.place === 'street' ? 'ladder/closed-road' : 'ladder/dyno-cell',
      facts: {},
    });
  }
  if (kind === 'spray' && plan.system.mix.massShares.methanol > 0)
    notes.push({ code: 'ladder/methanol-care', facts: {} });
  if (kind === 'boost') notes.push({ code: 'ladder/boost-breaks-engines', facts: {} });
  if (kind === 'spark') notes.push({ code: 'ladder/spark-breaks-engines', facts: {} });
  if (kind === 'mixture')
    notes.push({ code: 'mixture/lean-breaks-engines', facts: { leanest: input.limits.leanestLambda } });
  if (kind === 'boost' || kind === 'spark')
    notes.push({ code: 'ladder/prove-the-fallback', facts: { boost: plan.fallback.boost } });
  return notes;
}

/** Boost in steps up to the lowest cap, halves from the middle of the predicted room on. */
function climb(
  builder: Builder,
  caps: readonly BoostCap[],
  headroom: LadderHeadroom | null,
  standing: Standing,
  sizes: StepSizes,
): BoostCap {
  const top = caps[0];
  if (!top) throw new Error('the target is always a cap');
  // The edge is expected in the middle of the predicted room: whole steps up to it, halves past it.
  const edge = headroom ? headroom.shownBoost + (headroom.boost[0] + headroom.boost[1]) / 2 : standing.boost;
  const least = sizes.boost / 5;
  while (top.boost - builder.now.boost >= least) {
    const from = builder.now.boost;
    const wasKnock = standing.knock !== null;
    const isHalf = wasKnock || from + sizes.boost > edge + 10;
    const size = isHalf ? sizes.boost / 2 : sizes.boost;
    // A rest of less than a fifth of a step joins the last one.
    const to = top.boost - (from + size) < least ? top.boost : from + size;
    const reason: Note = wasKnock
      ? { code: 'ladder/half-after-knock', facts: { knocked: standing.knock?.boost ?? 0 } }
      : isHalf
        ? { code: 'ladder/half-near-edge', facts: { edge: Math.max(edge, 0) } }
        : { code: 'ladder/boost-first', facts: { size } };
    builder.boost(to, isHalf, reason);
    if (builder.steps.length > 60) break;
  }
  return top;
}

function endNote(top: BoostCap): Note {
  return { code: 'ladder/boost-ends', facts: { boost: top.boost, end: top.end } };
}

/** Spark up to the predicted edge: whole steps up to its middle, halves up to its end. */
function takeSpark(
  builder: Builder,
  boost: number,
  headroom: LadderHeadroom | null,
  standing: Standing,
  sizes: StepSizes,
): Note[] {
  if (standing.sparkBringsLittle) return [{ code: 'ladder/spark-brings-little', facts: {} }];
  if (standing.knock && standing.knock.kind === 'spark')
    return [{ code: 'ladder/spark-knocked', facts: { spark: standing.knock.spark_rad } }];
  if (!headroom) return [];
  const at = Math.max(boost, standing.boost);
  const room = sparkLeft(headroom, at, 0);
  const most = Math.min(room[1], sizes.mostSpark_rad);
  const slack = 0.02 * degree;
  if (most - builder.now.spark_rad < sizes.spark_rad / 2 - slack)
    return [{ code: 'ladder/no-spark-left', facts: { left: Math.max(0, room[1] - builder.now.spark_rad) } }];
  while (true) {
    const taken = builder.now.spark_rad;
    const isHalf = taken + sizes.spark_rad > (room[0] + room[1]) / 2 + slack;
    const more = isHalf ? sizes.spark_rad / 2 : sizes.spark_rad;
    if (taken + more > most + slack) break;
    builder.spark(more, isHalf, {
      code: isHalf ? 'ladder/spark-half' : 'ladder/spark-after-boost',
      facts: { left: Math.max(0, room[0] - taken), most: Math.max(0, room[1] - taken) },
    });
  }
  return [{ code: 'ladder/spark-ends', facts: { spark: builder.now.spark_rad } }];
}

/** A target as a control takes it, to a hundredth of lambda and never past what was found. */
function settable(target: number, now: number): number {
  const hundredths = target > now ? Math.floor(100 * target + 1e-6) : Math.ceil(100 * target - 1e-6);
  return hundredths / 100;
}

/** Mixture last, in steps that can be looked at one by one. */
function shiftMixture(
  builder: Builder,
  target: number,
  best: number,
  standing: Standing,
  sizes: StepSizes,
): void {
  const count = Math.max(1, Math.round(Math.abs(target - standing.lambda) / sizes.lambda));
  for (let i = 1; i <= count; i++)
    builder.mixture(
      settable(standing.lambda + ((target - standing.lambda) * i) / count, standing.lambda),
      best,
    );
}
