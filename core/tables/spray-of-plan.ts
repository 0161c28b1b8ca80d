import { deliveredAt, type Plan } from '../injection/index.ts';
import type { OperatingState, SprayAt } from './coverage.ts';

/** Needed and delivered fluid at a state, by the start and full points that are driven. */
export function sprayOfPlan(plan: Plan): SprayAt {
  return ({ engineSpeed_rad_s, boost }) => ({
    needed: plan.need.at(engineSpeed_rad_s, boost),
    delivered: deliveredAt(plan.context, plan.driven, engineSpeed_rad_s, boost),
  });
}

/** The states of the planned pull, for want of logged ones. */
export function statesOfPlan(plan: Plan): readonly OperatingState[] {
  const { engineSpeed_rad_s, boost } = plan.path;
  return engineSpeed_rad_s.map((speed, i) => ({
    engineSpeed_rad_s: speed,
    boost: boost[i] ?? 0,
    throttle: 1,
  }));
}
