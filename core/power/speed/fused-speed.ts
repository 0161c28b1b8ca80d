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
import { type RoadSpeed, roadSpeed } from './road-speed.ts';
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
  /** Engine speed at an instant [rad/s] where it does not go with the road; null where v and slip tell it. */
  readonly engineAt: ((time: number) => number) | null;
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

/**
 * No road speed reaches a log before the engine speed that made it by more than loggers read one channel after another
 * (common practice) [s]. Where it seems to, engine speed runs ahead of the road more and more.
 */
const mostLead = 0.1;

/** Readings that can be: 100 to 20,000 rpm. */
const engineRange = [10, 2095] as const;

/**
 * Speed of the car through a pull, from every speed that is logged.
 *
 * Both logged: engine speed is turned into road speed by the distance per radian, the slip and the lag that the
 * two show (slip.ts), then both channels are smoothed as one set of samples, each weighed by its own noise. So a
 * coarse vehicle speed fixes the scale and a finer engine speed the shape, or the other way round.
 * Both logged, but engine speed runs ahead of the road by more than tyres slip at full load (the pull's flag), or more and
 * more, as if the road knew beforehand: road speed alone tells then what moves the car (byRoadAlone).
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
    const lag = road.lag + both.model.lag;
    const isSpinning = pull.flags.some((flag) => flag.code === 'log/pull-wheel-spin');
    // A reading of the road that is held for long has no shape of its own.
    if ((isSpinning || lag < -mostLead) && road.hold === 0 && !isTooShort(road))
      return ok(byRoadAlone(engine, road, notes));
    notes.push({ code: 'power/slip-from-speed', facts: { slip: both.model.slip } });
    if (both.model.slip < leastSlip)
      notes.push({ code: 'power/speed-of-driven-wheels', facts: { slip: both.model.slip } });
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
      engineAt: null,
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
      engineAt: null,
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
    engineAt: null,
    interval: intervalOf(only),
    notes,
  });
}

/**
 * Road speed alone, where engine speed does not go with it: a clutch, a converter or spinning tyres turn part of it into
 * heat. It still tells at which engine speed the power stands. Slip and a late road speed look alike, so that what was
 * taken for lateness may be none: engine speed is that uncertain.
 */
function byRoadAlone(engine: SpeedSignal, road: RoadSpeed, notes: readonly Note[]): FusedSpeed {
  const table = tableOf(engine);
  const { time, value } = road;
  const ratios = time.map((t, i) => table.valueAt(t) / (value[i] as number)).sort();
  const level = (share: number) => ratios[Math.round(share * (ratios.length - 1))] as number;
  const [first, last] = [value[0] as number, value.at(-1) as number];
  const seconds = (time.at(-1) as number) - (time[0] as number);
  const growth = (2 * (last - first)) / ((last + first) * seconds);
  return {
    basis: 'vehicle-speed',
    estimator: slopeEstimator(samplesOf([road])),
    distance: 1 / level(0.5),
    slip: 0,
    scaleUncertainty: inputUncertainty.loggedSpeed,
    engineUncertainty: Math.abs(road.lag) * growth,
    engineAt: table.valueAt,
    interval: intervalOf(road),
    notes: [
      ...notes,
      // One reading in ten at either end is left to noise.
      { code: 'power/engine-ahead-of-road', facts: { excess: level(0.9) / level(0.1) - 1 } },
    ],
  };
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
