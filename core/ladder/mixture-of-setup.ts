import { petrolBlend } from '../fluids/index.ts';
import type { Plan, Setup } from '../injection/index.ts';
import { type MixturePlan, mixturePlan } from '../mixture/index.ts';
import { type Note, ok, type Result } from '../result/index.ts';
import { type ChargeModel, chargeModel } from './charge-of-setup.ts';

export type SetupMixture = { readonly plan: MixturePlan; readonly notes: readonly Note[] };

/** How finely boost is told apart in the table. */
const rows = 11;

/**
 * The mixture over boost of a setup, at the engine speed of peak power, where air and fluid are most.
 *
 * @param lambda   that the engine runs now; the setup's where null
 * @param leanest  that the user allows
 *
 * Errors: those of chargeModel and mixturePlan.
 */
export function mixtureOfSetup(
  setup: Setup,
  plan: Plan,
  leanest: number,
  lambda: number | null = null,
  model: ChargeModel | null = null,
): Result<SetupMixture> {
  const made = model ? ok(model) : chargeModel(setup, plan);
  if (!made.ok) return made;
  const petrol = petrolBlend(setup.engine.ethanol_percent / 100);
  if (!petrol.ok) return petrol;
  const speed = plan.path.peakSpeed_rad_s;
  const found = mixturePlan({
    petrol: petrol.value,
    mix: plan.system.mix,
    fuelling: setup.engine.fuelling ?? 'closed-loop',
    lambda: lambda ?? made.value.lambda,
    leanest,
    fullFeed: setup.targets.fluidRatio_percent / 100,
    points: Array.from({ length: rows }, (_, i) => {
      const boost = (plan.path.peakBoost * i) / (rows - 1);
      return {
        boost,
        engineSpeed_rad_s: speed,
        airFlow: made.value.airFlow(boost, speed),
        fluidFlow: made.value.fluidFlow(boost, speed) * plan.system.density,
      };
    }),
  });
  if (!found.ok) return found;
  const notes: Note[] = [
    ...made.value.notes.filter((n) => n.code === 'charge/practice-default' && n.facts.what === 'lambda'),
  ];
  if (setup.engine.fuelling === null) notes.push({ code: 'ladder/fuelling-unknown', facts: {} });
  return ok({ plan: found.value, notes });
}
