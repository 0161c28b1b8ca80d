/**
 * From baseline, target and limits to ordered single changes with stop rules.
 *
 *   planLadder(input)   every step with its gates and what it should bring; again after each verdict
 *   nextStep(input)     the one thing to do now, and why
 *   gatesOf(measured, context)   the stop rules of one entry and how close it came
 *   measuredOf(pulls)   what an entry's pulls measured of them
 *   fluidOfPulls(...)   the fluid that arrived, from the trim of pulls with and without spray
 *   mixtureOfSetup(setup, plan)  the mixture over boost
 */
import './notes.ts';

export * from './arrived-of-verdict.ts';
export { type BoostCap, type BoostEnd, boostEnds } from './caps.ts';
export { type ChargeModel, chargeModel, sameDay, type Today } from './charge-of-setup.ts';
export type { CoveredCells, SparkTable } from './covered-cells.ts';
export * from './explain-gate.ts';
export * from './explain-step.ts';
export * from './fluid-of-pulls.ts';
export * from './fuel-pump.ts';
export * from './gate.ts';
export { gateContext } from './gate-context.ts';
export * from './gates-of.ts';
export type { LadderHeadroom, Range } from './headroom.ts';
export { injectorDutyAt } from './injector-duty.ts';
export { type LadderInput, type StepSizes, usualSizes } from './ladder-input.ts';
export * from './ladder-json.ts';
export * from './limits.ts';
export * from './measured.ts';
export * from './mixture-json.ts';
export * from './mixture-of-setup.ts';
export * from './next-step.ts';
export { type Ladder, planLadder } from './plan-ladder.ts';
export * from './routine.ts';
export { isSprayProven, overFeedLoss } from './spray-proven.ts';
export type { LadderEntry, ReadEntry, Standing } from './standing.ts';
export * from './step.ts';
