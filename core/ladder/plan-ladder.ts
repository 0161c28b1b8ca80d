import { type Plan, planOf } from '../injection/index.ts';
import { type Note, ok, type Result } from '../result/index.ts';
import type { Explanation } from '../units/index.ts';
import { type BoostCap, boostCaps } from './caps.ts';
import { chargeModel, sameDay } from './charge-of-setup.ts';
import { climb, endNote, settable, shiftMixture, takeSpark } from './climb.ts';
import { gateContext } from './gate-context.ts';
import { type LadderHeadroom, ladderHeadroom } from './headroom.ts';
import { type LadderInput, type StepSizes, startBoost, usualSizes } from './ladder-input.ts';
import { mixtureOfSetup } from './mixture-of-setup.ts';
import { type Routine, routines } from './routine.ts';
import { isSprayProven } from './spray-proven.ts';
import { type Standing, standingOf } from './standing.ts';
import type { LadderStep } from './step.ts';
import { explainPower, stepBuilder } from './step-builder.ts';

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
