import { channelOf, type Log, type Pull } from '../log/index.ts';
import { fail, type Note, ok, type Result } from '../result/index.ts';
import type { Car } from './car.ts';
import { distancePerRadian } from './gearing.ts';
import { inputUncertainty, practice } from './practice.ts';
import type { PullWindow } from './pull-window.ts';
import { fitSlip } from './slip.ts';
import { type SlopeEstimator, slopeEstimator } from './slope-estimate.ts';
import { median, type SpeedSignal, speedSignal } from './speed-signal.ts';

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
  readonly notes: readonly Note[];
};

/** Tractive force over its peak from speed and acceleration, 0 to 1. */
export type ForceShare = (speed: number, acceleration: number) => number;

/**
 * Speed of the car through a pull, from every speed that is logged.
 *
 * Both logged: engine speed is turned into road speed by the distance per radian and the slip that the two show
 * (slip.ts), then both channels are smoothed as one set of samples, each weighed by its own noise. So a coarse
 * vehicle speed fixes the scale and a finer engine speed the shape, or the other way round.
 * Engine speed alone: gear, final drive and radius make the scale; slip as given, else 2 % at full force.
 * Vehicle speed alone: it is the road speed; the gearing serves to tell engine speed.
 *
 * @param forceAt  tractive force over speed and acceleration [N]
 * Errors: power/no-speed, power/no-gearing, power/no-engine-speed, power/pull-too-short.
 */
export function fusedSpeed(
  log: Log,
  pull: Pull,
  window: PullWindow,
  car: Car,
  forceAt: (speed: number, acceleration: number) => number,
): Result<FusedSpeed> {
  const notes: Note[] = [];
  const read = (quantity: 'engineSpeed' | 'gpsSpeed' | 'vehicleSpeed') => {
    const channel = channelOf(log, quantity);
    return channel ? speedSignal(log, channel, window.useFrom, window.useTo) : null;
  };
  const engine = read('engineSpeed');
  const road = better(read('gpsSpeed'), read('vehicleSpeed'));
  if (!engine && !road) return fail({ code: 'power/no-speed', facts: {} });
  const gear = pull.gear ?? car.pullGear;
  const nominal = distancePerRadian(car, gear);
  if (!road && !nominal.ok) return nominal;
  if (!engine && !nominal.ok) {
    const [first] = nominal.problems;
    const missing = first.code === 'power/no-gearing' ? first.facts.missing : 'gearRatios';
    return fail({ code: 'power/no-engine-speed', facts: { missing } });
  }
  for (const [signal, basis] of [
    [engine, 'engine-speed'],
    [road, 'vehicle-speed'],
  ] as const)
    if (signal) notes.push(...signalNotes(signal, basis));

  if (!road || !engine) {
    if (!nominal.ok) return nominal;
    const only = (engine ?? road) as SpeedSignal;
    if (only.time.length < 8) return tooShort(only);
    const { distance } = nominal.value;
    const slip = car.tyreSlip ?? practice.tyreSlip;
    notes.push(...nominal.value.notes);
    if (car.tyreSlip === null) notes.push({ code: 'power/default-slip', facts: { slip } });
    if (road) {
      const estimator = slopeEstimator(samplesOf([{ signal: road, value: road.value, noise: road.noise }]));
      const scaleUncertainty = inputUncertainty.loggedSpeed;
      return ok({ basis: 'vehicle-speed', estimator, distance, slip, scaleUncertainty, notes });
    }
    const scaleUncertainty = Math.hypot(
      nominal.value.uncertainty,
      car.tyreSlip === null ? inputUncertainty.slipDefault : inputUncertainty.slipGiven,
    );
    const estimator = engineBased(only, distance, slip, forceAt);
    return ok({ basis: 'engine-speed', estimator, distance, slip, scaleUncertainty, notes });
  }

  if (engine.time.length + road.time.length < 12) return tooShort(engine);
  const model = slipOf(engine, road, forceAt);
  const share = shareOf(engine, model.distance, forceAt);
  const asRoad = engine.value.map(
    (w, i) => (model.distance * w) / (1 + model.slip * share.at(engine.time[i] as number)),
  );
  const engineNoise = engine.noise * model.distance;
  const estimator = slopeEstimator(
    samplesOf([
      { signal: engine, value: asRoad, noise: engineNoise },
      { signal: road, value: road.value, noise: road.noise },
    ]),
  );
  const engineWeight = engine.time.length / engineNoise ** 2;
  const roadWeight = road.time.length / road.noise ** 2;
  notes.push({ code: 'power/slip-from-speed', facts: { slip: model.slip } });
  if (!nominal.ok)
    notes.push({
      code: 'power/gearing-from-speed',
      facts: { distancePerTurn: model.distance * 2 * Math.PI },
    });
  else {
    const difference = (model.distance * (1 - model.slip)) / nominal.value.distance - 1;
    // Slip of up to 4 % and a radius 1.5 % off are usual; beyond that one of the two is wrong.
    if (difference < -0.055 || difference > 0.02)
      notes.push({ code: 'power/speeds-disagree', facts: { difference } });
  }
  return ok({
    basis: engineWeight >= roadWeight ? 'engine-speed' : 'vehicle-speed',
    estimator,
    distance: model.distance,
    slip: model.slip,
    scaleUncertainty: Math.hypot(inputUncertainty.loggedSpeed, model.error),
    notes,
  });
}

function tooShort(signal: SpeedSignal): Result<never> {
  const seconds = (signal.time.at(-1) ?? 0) - (signal.time[0] ?? 0);
  return fail({ code: 'power/pull-too-short', facts: { samples: signal.time.length, seconds } });
}

/** Of two road speeds the one that would give the quieter slope. */
function better(a: SpeedSignal | null, b: SpeedSignal | null): SpeedSignal | null {
  if (!a || !b) return a ?? b;
  return a.noise / Math.sqrt(a.time.length) <= b.noise / Math.sqrt(b.time.length) ? a : b;
}

function signalNotes(signal: SpeedSignal, basis: 'engine-speed' | 'vehicle-speed'): Note[] {
  const notes: Note[] = [];
  if (signal.step > 0) notes.push({ code: 'power/speed-in-steps', facts: { basis, step: signal.step } });
  if (signal.hold > 0) notes.push({ code: 'power/speed-held', facts: { basis, interval: signal.hold } });
  if (signal.outliers > 0) notes.push({ code: 'power/outliers-left-out', facts: { count: signal.outliers } });
  return notes;
}

type Part = { readonly signal: SpeedSignal; readonly value: Float64Array; readonly noise: number };

/** Samples of all parts in order of time, each weighed by its own noise. */
function samplesOf(parts: readonly Part[]) {
  const all = parts.flatMap((p) =>
    Array.from(p.signal.time, (time, i) => ({ time, value: p.value[i] as number, weight: 1 / p.noise ** 2 })),
  );
  all.sort((a, b) => a.time - b.time);
  return {
    time: Float64Array.from(all, (s) => s.time),
    value: Float64Array.from(all, (s) => s.value),
    weight: Float64Array.from(all, (s) => s.weight),
  };
}

/** Force share over the pull as seen through a broad smoother: slip follows force, and noise in it must not. */
function shareOf(
  engine: SpeedSignal,
  distance: number,
  forceAt: (speed: number, acceleration: number) => number,
): { readonly at: (time: number) => number } {
  const estimator = slopeEstimator(samplesOf([{ signal: engine, value: engine.value, noise: engine.noise }]));
  const first = engine.time[0] as number;
  const last = engine.time.at(-1) as number;
  const count = Math.max(8, Math.round((last - first) / 0.15));
  const forces = Float64Array.from({ length: count }, (_, i) => {
    const p = estimator.at(first + ((last - first) * i) / (count - 1));
    return forceAt(p.value * distance, p.slope * distance);
  });
  const peak = Math.max(...forces.filter((_, i) => i > 1 && i < count - 2));
  return {
    at: (time) => {
      const x = ((time - first) / (last - first)) * (count - 1);
      const i = Math.min(count - 2, Math.max(0, Math.floor(x)));
      const f = (forces[i] as number) + (x - i) * ((forces[i + 1] as number) - (forces[i] as number));
      return Math.min(1.1, Math.max(0, f / peak));
    },
  };
}

function engineBased(
  engine: SpeedSignal,
  distance: number,
  slip: number,
  forceAt: (speed: number, acceleration: number) => number,
): SlopeEstimator {
  const share = shareOf(engine, distance, forceAt);
  const value = engine.value.map((w, i) => (distance * w) / (1 + slip * share.at(engine.time[i] as number)));
  return slopeEstimator(samplesOf([{ signal: engine, value, noise: engine.noise * distance }]));
}

function slipOf(
  engine: SpeedSignal,
  road: SpeedSignal,
  forceAt: (speed: number, acceleration: number) => number,
) {
  const smooth = slopeEstimator(samplesOf([{ signal: engine, value: engine.value, noise: engine.noise }]));
  const first = engine.time[0] as number;
  const last = engine.time.at(-1) as number;
  const inside = Array.from(road.time.keys()).filter(
    (i) => (road.time[i] as number) >= first && (road.time[i] as number) <= last,
  );
  const speed = Float64Array.from(inside, (i) => road.value[i] as number);
  const ratio = Float64Array.from(
    inside,
    (i, k) => smooth.at(road.time[i] as number).value / (speed[k] as number),
  );
  const rough = 1 / median(ratio);
  const share = shareOf(engine, rough, forceAt);
  return fitSlip(
    ratio,
    Float64Array.from(inside, (i) => share.at(road.time[i] as number)),
    speed.map((v) => road.noise / v),
  );
}
