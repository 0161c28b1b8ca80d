import type { PullEvidence } from '../compare/index.ts';
import type { QuantityId } from '../log/index.ts';
import { degrees } from '../units/index.ts';

/** The extremes of the counted pulls of one entry, SI; null where no channel tells. */
export type Measured = {
  readonly pulls: number;
  /** Events, or pulls in which the control pulled spark, whichever says more. */
  readonly knockEvents: number | null;
  readonly knockRetard_rad: number | null;
  readonly leanestLambda: number | null;
  /** [K] */
  readonly hottestIntake: number | null;
  readonly hottestExhaust: number | null;
  /** While fluid was asked for [Pa]. */
  readonly lowestFluidPressure: number | null;
  /** Highest seen [m^3/s]. */
  readonly fluidFlow: number | null;
  readonly injectorDuty: number | null;
  /** Highest logged [kg/s]. */
  readonly fuelFlow: number | null;
  /** Highest, absolute [Pa]. */
  readonly manifoldPressure: number | null;
  /** Highest, gauge [Pa]. */
  readonly boost: number | null;
  /** Lowest fuel pressure of a pull over that at its start. */
  readonly fuelPressureHeld: number | null;
  /** What is left in the tank as a share; of the last pull. */
  readonly fluidLevel: number | null;
};

export const nothingMeasured: Measured = {
  pulls: 0,
  knockEvents: null,
  knockRetard_rad: null,
  leanestLambda: null,
  hottestIntake: null,
  hottestExhaust: null,
  lowestFluidPressure: null,
  fluidFlow: null,
  injectorDuty: null,
  fuelFlow: null,
  manifoldPressure: null,
  boost: null,
  fuelPressureHeld: null,
  fluidLevel: null,
};

/** Spark that a control takes back beyond this is knock evidence, less is its housekeeping (common practice). */
const retardCounts_rad = degrees(0.5);
/** Of the highest boost of a pull: below it lambda and fluid are still on their way (common practice). */
const loadedFrom = 0.8;

/** Values of a curve where the engine is loaded and the value is known. */
function loaded(pull: PullEvidence, quantity: QuantityId): number[] {
  const curve = pull.curves[quantity];
  if (!curve) return [];
  const load = pull.curves.boost ?? pull.curves.manifoldPressure;
  let most = Number.NEGATIVE_INFINITY;
  if (load) for (const value of load) if (value > most) most = value;
  const values: number[] = [];
  for (const [i, value] of curve.entries()) {
    if (!Number.isFinite(value)) continue;
    if (load && most > 0 && !((load[i] ?? Number.NaN) >= loadedFrom * most)) continue;
    values.push(value);
  }
  return values;
}

/**
 * What an entry's pulls measured of the gates.
 *
 * Lambda and fluid pressure count where boost is 80 % of the pull's highest or more; temperatures, duty and pressure
 * over the whole pull.
 */
export function measuredOf(pulls: readonly PullEvidence[]): Measured {
  const counted = pulls.filter((p) => p.isComplete);
  const all = (quantity: QuantityId) =>
    counted.flatMap((p) => Array.from(p.curves[quantity] ?? []).filter(Number.isFinite));
  const most = (values: readonly number[]) =>
    values.length > 0 ? values.reduce((a, b) => Math.max(a, b)) : null;
  const least = (values: readonly number[]) =>
    values.length > 0 ? values.reduce((a, b) => Math.min(a, b)) : null;
  const retards = counted.map((p) => p.events.knockRetard_rad).filter((r) => r !== null);
  const counts = counted.map((p) => p.events.knockEvents).filter((n) => n !== null);
  const retarded = retards.filter((r) => r >= retardCounts_rad).length;
  const events = counts.reduce((a, b) => a + b, 0);
  const held = counted.flatMap((p) => {
    const start = p.start.fuelPressure;
    const lowest = least(Array.from(p.curves.fuelPressure ?? []).filter(Number.isFinite));
    return start !== undefined && start > 0 && lowest !== null ? [lowest / start] : [];
  });
  const last = counted[counted.length - 1];
  const levels = last ? Array.from(last.curves.fluidLevel ?? []).filter(Number.isFinite) : [];
  return {
    pulls: counted.length,
    knockEvents: counts.length + retards.length > 0 ? Math.max(events, retarded) : null,
    knockRetard_rad: most(retards),
    leanestLambda: most(counted.flatMap((p) => loaded(p, 'lambda'))),
    hottestIntake: most(all('intakeTemperature')),
    hottestExhaust: most(all('exhaustTemperature')),
    lowestFluidPressure: least(counted.flatMap((p) => loaded(p, 'fluidPressure'))),
    fluidFlow: most(all('fluidFlow')),
    injectorDuty: most(all('injectorDuty')),
    fuelFlow: most(all('fuelFlow')),
    manifoldPressure: most(all('manifoldPressure')),
    boost: most(all('boost')),
    fuelPressureHeld: least(held),
    fluidLevel: least(levels),
  };
}
