import type { Note } from '../../result/index.ts';
import type { ChangeKind } from '../verdict.ts';
import type { Movement } from '../witnesses/movement.ts';
import { type Control, quantityRules } from '../witnesses/quantity-rules.ts';

/** Intake temperatures this far apart are beyond what a correction by practice can carry [K]. */
const intakeLimit = 15;

/**
 * What the engine's own control and its heat did to the comparison, beside the witnesses of the change.
 *
 * @param changed  the control that was changed: boost warms the charge and fluid cools it, which is their effect
 */
export function controlReasons(movements: readonly Movement[], changed: Control | null): Note[] {
  return [...intakeReasons(movements, changed), ...retardReasons(movements)];
}

/** Boost neither was to change nor moved: then its small wandering can be held equal. */
export function isBoostSteady(movements: readonly Movement[], kind: ChangeKind | null): boolean {
  const isBoost = (m: Movement) => quantityRules[m.quantity]?.control === 'boost';
  return kind !== 'boost' && !movements.some((m) => isBoost(m) && m.hasMoved);
}

function intakeReasons(movements: readonly Movement[], changed: Control | null): Note[] {
  const intake = movements.find((m) => m.quantity === 'intakeTemperature');
  const isOwn = changed === 'boost' || changed === 'fluid';
  return intake && !isOwn && Math.abs(intake.delta) > intakeLimit
    ? [{ code: 'compare/intake-apart', facts: { delta: intake.delta } }]
    : [];
}

/** Knock control at work more on one side than on the other, over all its pulls. */
function retardReasons(movements: readonly Movement[]): Note[] {
  const retard = movements.find((m) => m.quantity === 'knockRetard');
  return retard?.hasMoved
    ? [{ code: 'compare/knock-retard', facts: { before: retard.before, after: retard.after } }]
    : [];
}
