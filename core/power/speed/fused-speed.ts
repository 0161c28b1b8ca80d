import { channelOf, type Log, type Pull } from '../../log/index.ts';
import { fail, type Note, ok, type Result } from '../../result/index.ts';
import type { Car } from '../car/car.ts';
import { distancePerRadian, gearingRead } from '../car/gearing.ts';
import { samplesOf } from '../gather.ts';
import { inputUncertainty, practice } from '../practice.ts';
import type { PullWindow } from '../pull-window.ts';
import { type SlopeEstimator, slopeEstimator } from '../smoothing/slope-estimate.ts';
import { asRoadSpeed, courseOf, type ForceAt, scaled, tableOf, together } from './both-speeds.ts';
import type { KnownLag } from './lag-of-log.ts';
import { roadSpeed } from './road-speed.ts';
import { type SpeedSignal, speedSignal } from './speed-signal.ts';

/** Road speed of a pull as one smooth thing, and the engine speed that belongs to it. */
export type FusedSpeed = {
  readonly basis: 'engine-speed' | 'vehicle-speed';
  /** Road speed and acceleration at an instant. */
  readonly estimator: SlopeEstimator;
  /** Distance per radian without slip [m]. */
  readonly distance: number;
  /** Slip at full force; engine speed is v / d * (1 + slip * F / Fmax). */
  readonly slip: number;
  /** Relative standard uncertainty of the speed scale. */
  readonly scaleUncertainty: number;
  /** The same of engine speed where gear and tyre tell it; nothing where it is logged. */
  readonly engineUncertainty: number;
  /** Usual time between readings of the speed that is read most often [s]. */
  readonly interval: number;
  readonly notes: readonly Note[];
};

/** Fewer readings of road speed than this say nothing beside engine speed. */
const leastReadings = 2;

/**
 * Fitted slip lies below this in five of six pulls whose speed is that of driven wheels, and in one of fifteen of the
 * others (generated at 20 rows a second).
 */
const leastSlip = 0.001;

/** Readings that can be: 100 to 20,000 rpm. */
const engineRange = [10, 2095] as const;

/**
 * Speed of the car through a pull, from every speed that is logged.
 *
 * Both logged: engine speed is turned into road speed by the distance per radian, the slip and the lag that the
 * two show (slip.ts), then both channels are smoothed as one set of samples, each weighed by its own noise. So a
 * coarse vehicle speed fixes the scale and a finer engine speed the shape, or the other way round.
 * Engine speed alone: gear, final drive and radius make the scale; slip as given, else 2 % at full force.
 * Vehicle speed alone: it is the road speed; the gearing serves to tell engine speed.
 *
 * Errors: power/no-gearing, power/no-engine-speed, power/pull-too-short.
 */
export function fusedSpeed(
  log: Log,
  pull: Pull,
  window: PullWindow,
  car: Car,
  forceAt: ForceAt,
  known: KnownLag | null,
): Result<FusedSpeed> {
  const channel = channelOf(log, 'engineSpeed');
  const engine = channel ? speedSignal(log, channel, window.useFrom, window.useTo, engineRange) : null;
  const told = roadSpeed(log, pull, window, known);
  // One reading shows no lag and no slip; where engine speed is there, gear and tyre say more.
  const road = engine && told && told.time.length < leastReadings ? null : told;
  if (!engine && !road) {
    const seconds = (log.time[window.to - 1] as number) - (log.time[window.from] as number);
    return fail({ code: 'power/pull-too-short', facts: { samples: window.to - window.from, seconds } });
  }
  const notes = [...signalNotes(engine, 'engine-speed'), ...signalNotes(road, 'vehicle-speed')];
  const isUnsettled = pull.flags.some((flag) => flag.code === 'log/pull-gear-unsettled');
  const nominal = distancePerRadian(car, pull.gear ?? (isUnsettled ? null : car.pullGear));

  if (engine && road) {
    if (isTooShort(engine)) return tooShort(engine);
    // A satellite receiver filters over some tenths of a second; a wheel sensor is a bus message late.
    const unknown = road.isSatellite && road.lag === 0 ? 0.3 : 0.06;
    const usualLag = known && road.isKnown ? known.error : unknown;
    const both = together(engine, road, usualLag, nominal.ok ? nominal.value : null, forceAt);
    notes.push({ code: 'power/slip-from-speed', facts: { slip: both.model.slip } });
    if (both.model.slip < leastSlip)
      notes.push({ code: 'power/speed-of-driven-wheels', facts: { slip: both.model.slip } });
    const lag = road.lag + both.model.lag;
    if (Math.abs(lag) > 0.05) notes.push({ code: 'power/speed-late', facts: { lag } });
    if (!nominal.ok) {
      const distancePerTurn = both.model.distance * 2 * Math.PI;
      const read = gearingRead(both.model.distance, car, pull.gear ?? car.pullGear);
      notes.push({ code: 'power/gearing-from-speed', facts: { distancePerTurn, ...read } });
    } else {
      const difference = (both.model.distance * (1 - both.model.slip)) / nominal.value.distance - 1;
      // Slip of up to 4 % and a radius 1.5 % off are usual; beyond that one of the two is wrong.
      if (difference < -0.055 || difference > 0.02)
        notes.push({ code: 'power/speeds-disagree', facts: { difference } });
    }
    return ok({
      basis: both.basis,
      estimator: both.estimator,
      distance: both.model.distance,
      slip: both.model.slip,
      scaleUncertainty: Math.hypot(inputUncertainty.loggedSpeed, both.model.error),
      engineUncertainty: 0,
      interval: Math.min(intervalOf(engine), intervalOf(road)),
      notes,
    });
  }

  if (!nominal.ok) {
    if (engine) return nominal;
    const [first] = nominal.problems;
    const missing = first.code === 'power/no-gearing' ? first.facts.missing : 'gearRatios';
    return fail({ code: 'power/no-engine-speed', facts: { missing } });
  }
  const only = (engine ?? road) as SpeedSignal;
  if (isTooShort(only)) return tooShort(only);
  const { distance } = nominal.value;
  const slip = car.tyreSlip ?? practice.tyreSlip;
  notes.push(...nominal.value.notes);
  if (car.tyreSlip === null) notes.push({ code: 'power/default-slip', facts: { slip } });
  const slipUncertainty = car.tyreSlip === null ? inputUncertainty.slipDefault : inputUncertainty.slipGiven;
  const byGear = Math.hypot(nominal.value.uncertainty, slipUncertainty);
  if (!engine)
    return ok({
      basis: 'vehicle-speed',
      estimator: slopeEstimator(samplesOf([only])),
      distance,
      slip,
      scaleUncertainty: inputUncertainty.loggedSpeed,
      engineUncertainty: byGear,
      interval: intervalOf(only),
      notes,
    });
  const { peak } = courseOf(scaled(tableOf(engine), distance), forceAt);
  return ok({
    basis: 'engine-speed',
    estimator: slopeEstimator(samplesOf([asRoadSpeed(engine, { distance, slip }, peak, forceAt)])),
    distance,
    slip,
    scaleUncertainty: byGear,
    engineUncertainty: 0,
    interval: intervalOf(only),
    notes,
  });
}

function intervalOf({ time }: SpeedSignal): number {
  return ((time.at(-1) as number) - (time[0] as number)) / (time.length - 1);
}

function isTooShort(signal: SpeedSignal): boolean {
  return signal.time.length < 8;
}

function tooShort(signal: SpeedSignal): Result<never> {
  const seconds = (signal.time.at(-1) ?? 0) - (signal.time[0] ?? 0);
  return fail({ code: 'power/pull-too-short', facts: { samples: signal.time.length, seconds } });
}

function signalNotes(signal: SpeedSignal | null, basis: 'engine-speed' | 'vehicle-speed'): Note[] {
  const notes: Note[] = [];
  if (!signal) return notes;
  if (signal.step > 0) notes.push({ code: 'power/speed-in-steps', facts: { basis, step: signal.step } });
  if (signal.hold > 0) notes.push({ code: 'power/speed-held', facts: { basis, interval: signal.hold } });
  if (signal.outliers > 0) notes.push({ code: 'power/outliers-left-out', facts: { count: signal.outliers } });
  return notes;
}
