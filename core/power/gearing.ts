import { channelOf, type Log, median, nearestGear, type Pull } from '../log/index.ts';
import { fail, type Note, ok, type Problem, type Result } from '../result/index.ts';
import type { Car } from './car.ts';
import { type FormulaCard, input } from './explain.ts';
import { inputUncertainty } from './practice.ts';
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

/** Gearing as the log shows it. */
export type Gearing = {
  /** Road distance per radian of the crank, slip included [m]. */
  readonly distancePerRadian: number;
  /** Half of its 95 % interval, from the scatter between pulls where there are several, else within the one [m]. */
  readonly half: number;
  /** Crank turns per wheel turn (gear times final drive), where the radius is known, slip included. */
  readonly overallRatio: number | null;
  readonly gear: number | null;
};

/**
 * Gear and tyre as one number, from pulls that log both speeds.
 *
 *   d = median over samples of v / w
 *
 * @returns power/no-gearing where either speed is not logged
 *
 * Valid:  pulls in one gear with little slip. At full load the driven tyres run 1 to 3 % ahead, so that d stands
 *         1 to 3 % below radius over ratio; a cruise shows the true one.
 * Source: kinematics; the slip is common practice.
 */
export function estimateGearing(log: Log, pulls: readonly Pull[], car?: Car): Result<Gearing> {
  const w = channelOf(log, 'engineSpeed');
  const v = channelOf(log, 'gpsSpeed') ?? channelOf(log, 'vehicleSpeed');
  if (!w || !v || pulls.length === 0)
    return fail({ code: 'power/no-gearing', facts: { missing: 'gearRatios' } });
  const perPull = pulls.map((pull) => {
    const ratios: number[] = [];
    for (let i = pull.from; i < pull.to; i++) {
      const r = (v.values[i] as number) / (w.values[i] as number);
      if (Number.isFinite(r) && r > 0) ratios.push(r);
    }
    const centre = median(Float64Array.from(ratios));
    const spread = 1.4826 * median(Float64Array.from(ratios, (r) => Math.abs(r - centre)));
    return { centre, error: spread / Math.sqrt(Math.max(1, ratios.length)) };
  });
  const good = perPull.filter((p) => Number.isFinite(p.centre));
  if (good.length === 0) return fail({ code: 'power/no-gearing', facts: { missing: 'gearRatios' } });
  const d = median(Float64Array.from(good, (p) => p.centre));
  const between = 1.4826 * median(Float64Array.from(good, (p) => Math.abs(p.centre - d)));
  const within = median(Float64Array.from(good, (p) => p.error));
  const half = 2 * Math.max(within, between / Math.sqrt(good.length));
  const radius = car ? rollingRadius(car).radius : null;
  return ok({
    distancePerRadian: d,
    half,
    overallRatio: radius === null ? null : radius / d,
    gear: car?.finalDrive && radius !== null ? nearestGear(car.gearRatios, car.finalDrive, radius / d) : null,
  });
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
