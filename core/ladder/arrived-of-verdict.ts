import type { Plan } from '../injection/index.ts';
import { type FluidFromTrim, fluidFromTrim, type Measured } from '../mixture/index.ts';
import type { Result } from '../result/index.ts';
import type { ChargeModel } from './charge-of-setup.ts';

/** `trim`: what the loop cut; `duty`: how much shorter the injectors were open. */
export type ArrivedBy = 'trim' | 'duty';
export type Arrived = { readonly by: ArrivedBy; readonly change: Measured; readonly found: FluidFromTrim };

/** What a verdict carries of its witnesses: means before and after, and the interval of their difference. */
export type WitnessedVerdict = {
  readonly band_rad_s: readonly [number, number] | null;
  readonly witnesses: readonly {
    readonly quantity: string;
    readonly before: number;
    readonly after: number;
    readonly interval95: readonly [number, number];
  }[];
};

/** Fuel flow of the plan is known to this (common practice: consumption of a maker or of a dyno). */
const fuelKnownTo = 0.05;
/**
 * A trim is what stays over after the control has metered petrol to the air it sees, more air by boost or cooling
 * included: only what it fails to see would move the ratio, some 1 % (common practice).
 */
const airAsMetered: Measured = { value: 1, half: 0.01 };
/** Of the duty that is dead time, in which nothing flows: 3 to 8 % at full load (common practice). */
const deadShare = 0.05;

type Witness = WitnessedVerdict['witnesses'][number];

/** Petrol after over before, less 1, by the trims where there are any, else by the duty; null where neither was logged. */
function changeOf(of: (quantity: string) => Witness | undefined): { by: ArrivedBy; change: Measured } | null {
  const trims = [of('fuelTrimShort'), of('fuelTrimLong')].filter((w) => w !== undefined);
  if (trims.length > 0) {
    const value = trims.reduce((product, t) => product * ((1 + t.after) / (1 + t.before)), 1) - 1;
    return { by: 'trim', change: { value, half: Math.hypot(...trims.map((t) => halfOf(t.interval95))) } };
  }
  const duty = of('injectorDuty');
  if (!duty || !(duty.before > deadShare)) return null;
  const open = duty.before - deadShare;
  return {
    by: 'duty',
    change: { value: (duty.after - duty.before) / open, half: halfOf(duty.interval95) / open },
  };
}

/** Air after over before: metered away where the trim tells, by the manifold's pressure where the duty does. */
function airRatioOf(by: ArrivedBy, of: (quantity: string) => Witness | undefined, ambient: number): Measured {
  if (by === 'trim') return airAsMetered;
  const manifold = of('manifoldPressure');
  const boost = of('boost');
  const [load, base] = manifold ? [manifold, 0] : [boost, ambient];
  if (!load) return airAsMetered;
  return {
    value: (load.after + base) / (load.before + base),
    half: Math.hypot(airAsMetered.half, halfOf(load.interval95) / (load.before + base)),
  };
}

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
 * Fluid that arrived with the spray turned on, from the trims before and after, else from the injectors' duty; null
 * where neither was logged.
 *
 * @param verdict  of the spray entry against the one before it
 *
 * Short and long trim multiply. Where lambda moved, the petrol that this took is not the alcohol's doing. A duty has
 * its dead time taken off and carries the air with it, so the manifold's pressure is taken out again.
 *
 * Valid:  a loop that holds lambda; a duty only with fuel pressure held.
 * Errors: those of fluidFromTrim.
 * Source: core/mixture/fluid-from-trim.ts.
 */
export function arrivedOfVerdict(
  verdict: WitnessedVerdict,
  plan: Plan,
  model: ChargeModel,
): Result<Arrived> | null {
  const of = (quantity: string) => verdict.witnesses.find((w) => w.quantity === quantity);
  const seen = changeOf(of);
  const band = verdict.band_rad_s;
  if (!seen || !band) return null;
  const { by, change } = seen;
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
    airRatio: airRatioOf(by, of, model.ambientPressure),
    planned: planned > 0 ? planned : null,
  });
  return found.ok ? { ok: true, value: { by, change, found: found.value } } : found;
}
