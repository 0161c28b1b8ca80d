import type { VerdictWire } from '../../core/contract/index.ts';
import type { Plan } from '../../core/injection/index.ts';
import type { ChargeModel } from '../../core/ladder/index.ts';
import { type FluidFromTrim, fluidFromTrim, type Measured } from '../../core/mixture/index.ts';
import type { Result } from '../../core/result/index.ts';

export type Arrived = { readonly change: Measured; readonly found: FluidFromTrim };

/** Fuel flow of the plan is known to this (common practice: consumption of a maker or of a dyno). */
const fuelKnownTo = 0.05;
/**
 * A trim is what stays over after the control has metered petrol to the air it sees, more air by boost or cooling
 * included: only what it fails to see would move the ratio, some 1 % (common practice).
 */
const airAsMetered: Measured = { value: 1, half: 0.01 };

function halfOf(interval: readonly [number, number]): number {
  return (interval[1] - interval[0]) / 2;
}

/** Mean over the range of the comparison of what the plan says of each speed of the pull. */
function meanOver(
  plan: Plan,
  band: readonly [number, number],
  at: (n: number, boost: number) => number,
): number {
  const values = Array.from(plan.path.engineSpeed_rad_s, (n, i) =>
    n >= band[0] && n <= band[1] ? at(n, plan.path.boost[i] ?? 0) : Number.NaN,
  ).filter(Number.isFinite);
  return values.length > 0 ? values.reduce((a, b) => a + b, 0) / values.length : Number.NaN;
}

/**
 * Fluid that arrived with the spray turned on, from the trims before and after; null where no trim was logged.
 *
 * @param verdict  of the spray entry against the one before it
 *
 * Short and long trim multiply. Where lambda moved, the petrol that this took is not the alcohol's doing.
 */
export function arrivedOfVerdict(
  verdict: VerdictWire,
  plan: Plan,
  model: ChargeModel,
): Result<Arrived> | null {
  const of = (quantity: string) => verdict.witnesses.find((w) => w.quantity === quantity);
  const trims = [of('fuelTrimShort'), of('fuelTrimLong')].filter((w) => w !== undefined);
  const band = verdict.band_rad_s;
  if (trims.length === 0 || !band) return null;
  const value = trims.reduce((product, t) => product * ((1 + t.after) / (1 + t.before)), 1) - 1;
  const change = { value, half: Math.hypot(...trims.map((t) => halfOf(t.interval95))) };
  const lambda = of('lambda');
  const petrol = meanOver(plan, band, plan.fuel.at);
  const planned = meanOver(plan, band, (n, b) => model.fluidFlow(b, n) * plan.system.density);
  const found = fluidFromTrim({
    mix: plan.system.mix,
    petrolAirFuel: model.petrolAirFuel,
    petrolFlow: { value: petrol, half: fuelKnownTo * petrol },
    change,
    lambdaRatio: lambda
      ? { value: lambda.after / lambda.before, half: halfOf(lambda.interval95) / lambda.before }
      : { value: 1, half: 0 },
    airRatio: airAsMetered,
    planned: planned > 0 ? planned : null,
  });
  return found.ok ? { ok: true, value: { change, found: found.value } } : found;
}
