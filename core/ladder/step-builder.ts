import { chargeAlong } from '../charge/index.ts';
import type { Plan, Setup } from '../injection/index.ts';
import type { Note } from '../result/index.ts';
import type { Explanation } from '../units/index.ts';
import type { ChargeModel } from './charge-of-setup.ts';
import { coveredOf } from './covered-cells.ts';
import { type ExplainedAt, explainDuty, explainManifold, explainPump } from './explain-step.ts';
import { fuelPumpAt } from './fuel-pump.ts';
import { gateContext } from './gate-context.ts';
import { gatesOf } from './gates-of.ts';
import { type LadderHeadroom, type Range, sparkLeft } from './headroom.ts';
import { injectorDutyAt } from './injector-duty.ts';
import { type LadderInput, type StepSizes, startBoost } from './ladder-input.ts';
import { nothingMeasured } from './measured.ts';
import { powerAfter, times } from './predicted-power.ts';
import type { Routine } from './routine.ts';
import { overFeedLoss } from './spray-proven.ts';
import type { Standing } from './standing.ts';
import type { LadderStep, StepKind } from './step.ts';

export type Building = {
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
export type StepBuilder = ReturnType<typeof stepBuilder>;

/** Makes steps one after the other, each from where the one before leaves the engine. */
export function stepBuilder(of: Building) {
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

export function explainPower(plan: Plan, setup: Setup, after: Range | null): Explanation {
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
