import { useMemo } from 'react';
import { type Plan, planOf, type Setup } from '../../core/injection/index.ts';
import {
  type ChargeModel,
  chargeModel,
  explainDuty,
  injectorDutyAt,
  mixtureOfSetup,
  type SetupMixture,
} from '../../core/ladder/index.ts';
import { ok, type Result } from '../../core/result/index.ts';
import type { Explanation } from '../../core/units/index.ts';
import { type SheetDoc, setupOf } from '../sheets/sheet-doc.ts';

export type MixtureNow = {
  readonly setup: Setup;
  readonly plan: Plan;
  readonly model: ChargeModel;
  readonly mixture: SetupMixture;
  /** Beside each row, as a share; null where unknown. */
  readonly duty: readonly (number | null)[];
  /** Of the last row. */
  readonly dutyExplained: Explanation | null;
};

/** The mixture over boost of what is typed now, with the injector duty that goes with it. */
export function useMixture(doc: SheetDoc): Result<MixtureNow> {
  return useMemo(() => {
    const setup = setupOf(doc);
    const plan = planOf(setup);
    if (!plan.ok) return plan;
    const model = chargeModel(setup, plan.value);
    if (!model.ok) return model;
    const mixture = mixtureOfSetup(setup, plan.value, doc.limits.leanestLambda, null, model.value);
    if (!mixture.ok) return mixture;
    // In open loop nobody takes petrol back until the tuner does, so the duty is that without a cut.
    const isCut = setup.engine.fuelling !== 'open-loop';
    const duty = mixture.value.plan.rows.map((row) =>
      injectorDutyAt(
        setup,
        plan.value,
        model.value.ambientPressure,
        row.boost,
        isCut ? row.demand.alcoholShare : 0,
      ),
    );
    const peak = mixture.value.plan.rows.at(-1);
    const dutyExplained =
      peak === undefined
        ? null
        : explainDuty({
            setup,
            plan: plan.value,
            ambientPressure: model.value.ambientPressure,
            boost: peak.boost,
            alcoholShare: isCut ? peak.demand.alcoholShare : 0,
          });
    return ok({ dutyExplained, setup, plan: plan.value, model: model.value, mixture: mixture.value, duty });
  }, [doc]);
}
