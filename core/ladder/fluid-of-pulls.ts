import { type PullEvidence, tQuantile } from '../compare/index.ts';
import { petrolBlend } from '../fluids/index.ts';
import type { Plan, Setup } from '../injection/index.ts';
import { type FluidFromTrim, fluidFromTrim, type Measured as MeasuredNumber } from '../mixture/index.ts';
import { ok, type Result } from '../result/index.ts';
import type { ChargeModel } from './charge-of-setup.ts';

/** Of the highest boost of a pull: spray and trim have settled from here on (common practice). */
const settledFrom = 0.9;
/** Half interval of one pull where no second tells how it scatters: a trim wanders by about this (common practice). */
const lonePull = 0.01;
/** What the control's own idea of the air may be off by when the spray cools it unseen (common practice). */
const airUnsure = 0.01;
/** Boost of the two sides may differ by this share; more and the fuel is that of another state (common practice). */
const sameBoost = 0.03;

type Settled = {
  readonly trim: number;
  readonly lambda: number | null;
  readonly boost: number;
  readonly engineSpeed_rad_s: number;
};

/** Means of one pull where boost has settled; null where no trim or no boost was logged. */
function settledOf(pull: PullEvidence): Settled | null {
  const { boost, manifoldPressure, fuelTrimShort, fuelTrimLong, lambda } = pull.curves;
  const load = boost ?? manifoldPressure;
  if (!load || !(fuelTrimShort ?? fuelTrimLong)) return null;
  let most = Number.NEGATIVE_INFINITY;
  for (const value of load) if (value > most) most = value;
  const sums = { trim: 0, lambda: 0, boost: 0, speed: 0 };
  let [count, lambdas] = [0, 0];
  for (const [i, value] of load.entries()) {
    const trim = (fuelTrimShort?.[i] ?? 0) + (fuelTrimLong?.[i] ?? 0);
    if (!(value >= settledFrom * most) || !Number.isFinite(trim)) continue;
    count++;
    sums.trim += trim;
    sums.boost += value;
    sums.speed += pull.power.engineSpeed_rad_s[i] ?? 0;
    const mixture = lambda?.[i] ?? Number.NaN;
    if (Number.isFinite(mixture)) {
      sums.lambda += mixture;
      lambdas++;
    }
  }
  if (count === 0) return null;
  return {
    trim: sums.trim / count,
    lambda: lambdas > 0 ? sums.lambda / lambdas : null,
    boost: sums.boost / count,
    engineSpeed_rad_s: sums.speed / count,
  };
}

/** Mean with half of its 95 % interval. */
function meanOf(values: readonly number[]): MeasuredNumber {
  const n = values.length;
  const value = values.reduce((a, b) => a + b, 0) / n;
  if (n < 2) return { value, half: lonePull };
  const variance = values.reduce((sum, v) => sum + (v - value) ** 2, 0) / (n - 1);
  return { value, half: tQuantile(0.975, n - 1) * Math.sqrt(variance / n) };
}

/**
 * Fluid that arrived, from the fuel trim of pulls with the spray against pulls without it, at one boost.
 *
 *   c = (1 + trim after) / (1 + trim before) - 1,   see fluidFromTrim
 *
 * @returns  null where either side logged no trim, or boost differs by more than 3 %
 *
 * Valid:  a loop on lambda that holds its target at full load; both sides mean over the settled part of each pull.
 * Errors: those of fluidFromTrim, as mixture/no-alcohol-to-see.
 * Source: core/mixture/fluid-from-trim.ts; t interval over pulls.
 */
export function fluidOfPulls(
  setup: Setup,
  plan: Plan,
  model: ChargeModel,
  before: readonly PullEvidence[],
  after: readonly PullEvidence[],
): Result<FluidFromTrim | null> {
  const sides = [before, after].map((pulls) =>
    pulls.filter((p) => p.isComplete).flatMap((p) => settledOf(p) ?? []),
  );
  const [dry = [], wet = []] = sides;
  if (dry.length === 0 || wet.length === 0) return ok(null);
  const boost = [meanOf(dry.map((s) => s.boost)).value, meanOf(wet.map((s) => s.boost)).value] as const;
  if (Math.abs(boost[1] / boost[0] - 1) > sameBoost) return ok(null);
  const petrol = petrolBlend(setup.engine.ethanol_percent / 100);
  if (!petrol.ok) return petrol;
  const speed = meanOf(wet.map((s) => s.engineSpeed_rad_s)).value;
  const gauge = after[0]?.curves.boost ? boost[1] : boost[1] - model.ambientPressure;
  const [trimDry, trimWet] = [meanOf(dry.map((s) => s.trim)), meanOf(wet.map((s) => s.trim))];
  const lambdas = [dry, wet].map((side) => side.flatMap((s) => s.lambda ?? []));
  const [lambdaDry, lambdaWet] = lambdas.map((side) => (side.length > 0 ? meanOf(side) : null));
  const fuel = plan.fuel.at(speed, gauge);
  return fluidFromTrim({
    mix: plan.system.mix,
    petrolAirFuel: petrol.value.stoichiometricAirFuel,
    // Fuel by power or duty is known to some 5 % (common practice); it scales the answer, as the plan's flow does.
    petrolFlow: { value: fuel, half: 0.05 * fuel },
    change: {
      value: (1 + trimWet.value) / (1 + trimDry.value) - 1,
      half: Math.hypot(trimDry.half, trimWet.half),
    },
    lambdaRatio:
      lambdaDry && lambdaWet
        ? {
            value: lambdaWet.value / lambdaDry.value,
            half: Math.hypot(lambdaDry.half, lambdaWet.half) / lambdaDry.value,
          }
        : { value: 1, half: lonePull },
    airRatio: { value: 1, half: airUnsure },
    planned: model.fluidFlow(gauge, speed) * plan.system.density,
  });
}
