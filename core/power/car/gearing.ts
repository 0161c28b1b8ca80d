import { fail, type Note, ok, type Problem, type Result } from '../../result/index.ts';
import { type FormulaCard, input } from '../explain.ts';
import { inputUncertainty } from '../practice.ts';
import type { Car } from './car.ts';
import { tyreSize } from './tyre-size.ts';

/** Rolling radius of the car [m]: as measured, else from the tyre's size; null where neither is given. */
export function rollingRadius(car: Car): {
  readonly radius: number | null;
  readonly uncertainty: number;
  readonly notes: readonly Note[];
} {
  if (car.rollingRadius_m !== null)
    return { radius: car.rollingRadius_m, uncertainty: inputUncertainty.radiusGiven, notes: [] };
  const tyre = car.tyre ?? '';
  const size = tyre === '' ? null : tyreSize(tyre);
  if (!size?.ok) return { radius: null, uncertainty: Number.NaN, notes: [] };
  const radius = size.value.rollingRadius;
  const notes: Note[] = [{ code: 'power/radius-from-tyre', facts: { tyre, radius } }];
  return { radius, uncertainty: inputUncertainty.radiusFromTyre, notes };
}

/** Ratio of a gear; one ratio alone says which gear the car is driven in. */
export function gearRatio({ gearRatios }: Car, gear: number | null): number | undefined {
  return gearRatios.length === 1 && gear === null ? gearRatios[0] : gearRatios[(gear ?? 0) - 1];
}

/**
 * Distance rolled per radian of the crank, without slip: radius / (gear ratio * final drive) [m].
 *
 * @param gear    1 for first
 * Errors: power/no-gearing, naming the first thing that is missing.
 * Check:  0.308 m, 1.36, 3.9: 0.05807 m.
 */
export function distancePerRadian(
  car: Car,
  gear: number | null,
): Result<{ readonly distance: number; readonly uncertainty: number; readonly notes: readonly Note[] }> {
  const missing = (
    what: 'gearRatios' | 'finalDrive' | 'radius' | 'gear',
  ): { ok: false; problems: readonly [Problem] } =>
    fail({ code: 'power/no-gearing', facts: { missing: what } }) as {
      ok: false;
      problems: readonly [Problem];
    };
  if (car.gearRatios.length === 0) return missing('gearRatios');
  if (car.finalDrive === null) return missing('finalDrive');
  const tyre = rollingRadius(car);
  if (tyre.radius === null) return missing('radius');
  const ratio = gearRatio(car, gear);
  if (ratio === undefined) return missing('gear');
  return ok({
    distance: tyre.radius / (ratio * car.finalDrive),
    uncertainty: tyre.uncertainty,
    notes: tyre.notes,
  });
}

/** What a distance per turn says of the rest of the driveline. */
export type GearingRead = {
  /** Rolling radius [m], where the gear's ratios are known and the radius is not. */
  readonly radius: number | null;
  /** Crank turns per wheel turn, gear times final drive, where the radius is known. */
  readonly overallRatio: number | null;
};

/**
 * Tyre or ratio from the distance that a log with both speeds shows.
 *
 *   r = d i i0;  i i0 = r / d
 *
 * @param distance  road per radian of the crank without slip [m]
 * @param gear      1 for first, null where nobody knows
 * Source: kinematics.
 * Check:  0.05807 m in a gear of 1.36 with a final drive of 3.9: 0.308 m.
 */
export function gearingRead(distance: number, car: Car, gear: number | null): GearingRead {
  const { radius } = rollingRadius(car);
  if (radius !== null) return { radius: null, overallRatio: radius / distance };
  const ratio = gearRatio(car, gear);
  const isKnown = ratio !== undefined && car.finalDrive !== null;
  return { radius: isKnown ? distance * ratio * (car.finalDrive ?? 1) : null, overallRatio: null };
}

export const explainGearing: FormulaCard = {
  formula: 'd = r / (i i0) without slip;  d = median(v / w) from the log',
  inputs: [
    input('r', 'm', 'rolling radius'),
    input('i', '1', 'gear ratio'),
    input('i0', '1', 'final drive'),
    input('v', 'm/s', 'road speed'),
    input('w', 'rad/s', 'engine speed'),
  ],
  source: 'kinematics; slip of 1 to 3 % at full load is common practice',
  validRange: 'one gear, clutch closed, no wheel spin',
};
