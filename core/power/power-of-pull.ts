import { channelOf, type Log, type Pull } from '../log/index.ts';
import { fail, type Note, ok, type Problem, type Result } from '../result/index.ts';
import { airOfPull } from './air/air-of-pull.ts';
import { type PullCorrection, pullCorrection } from './air/pull-correction.ts';
import type { Car } from './car/car.ts';
import { wheelMass } from './car/wheel-mass.ts';
import type { Conditions } from './conditions.ts';
import { directPower } from './direct-power.ts';
import { type FormulaCard, input } from './explain.ts';
import { gradeOfPull } from './grade.ts';
import { practice } from './practice.ts';
import type { PullPower } from './pull-power.ts';
import { powersAlong, readAt, trackOf } from './pull-track.ts';
import { latestTold, pullWindow, toldFrom } from './pull-window.ts';
import { loadAt, roadLoad } from './road-load.ts';
import { isAfterFall, settledAt } from './settled-start.ts';
import { fusedSpeed } from './speed/fused-speed.ts';
import type { KnownLag } from './speed/lag-of-log.ts';
import { speedGrid } from './speed-grid.ts';
import { withShift } from './systematic-error.ts';

export type PowerOptions = {
  /** Beats what the log and the place suggest. 'road' never reads a torque or power channel. */
  readonly basis?: 'road' | 'dyno';
  /** How late the road speed is, as all pulls of the log have it; else each pull tells for itself. */
  readonly speedLag?: KnownLag | null;
};

/**
 * Wheel and engine power of one pull over engine speed.
 *
 *   Pw = ((m + Iw / r^2) dv/dt + a + b v + c v^2 + m g sin) v        wheel power
 *   Pe = Pw / efficiency + Ie w dw/dt                                engine power
 *
 * Wheel power is what the drive shafts hand to the car through its wheels at road speed: it accelerates the mass
 * and turns up all wheels (Iw, driven or not), and overcomes rolling, air and slope. Tyre slip is not in it: the
 * speed is the road's. What turns up crank, flywheel and gears is not in it either; engine power gives that back
 * and divides by the drivetrain efficiency, which by its definition (wheel over crank power) holds the slip loss.
 * An inertia that the car file leaves out is not guessed: it counts as none, a note says how much that may be
 * worth (wheels: some 3 % of the mass, so wheel power reads 2 to 3 % low), and the systematic error holds it.
 *
 * @returns  arrays over whole multiples of 50 rpm (25 in a short pull) inside the pull, SI. wheelPowerError is
 *           one standard error from this pull's noise and smoothing, systematicError one standard uncertainty common to all
 *           pulls of the car. Both powers are multiplied by the correction factor where one is asked for.
 *
 * Basis:  a dyno's power or torque channel on a dyno; else both logged speeds together, or the one that is there
 *         (see fused-speed). Only samples at full throttle are used: those of the pull, and beyond its ends only
 *         where pedal or throttle stayed open, as in a pull trimmed by hand.
 * Valid:  one gear, clutch closed, still air; from 0.15 s after full throttle, from 0.25 s in a log at 10 Hz, from up
 *         to 0.4 s after a gear change (see toldFrom and settledAt). On generated drives (tests/bench/power-accuracy.bench.ts) within 1.5 % RMS at 20 Hz and 3 % at
 *         10 Hz with steps of 1 km/h and 25 rpm, but for one in a hundred with a steep onset in second gear.
 * Errors: power/no-speed, power/no-gearing, power/no-engine-speed, power/pull-too-short, power/not-accelerating,
 *         power/engine-too-fast.
 * Source: Newton's second law; the form as in Gillespie, Fundamentals of Vehicle Dynamics, chapter 2 (from
 *         memory). Acceleration by a smoothing spline, see slope-estimate.
 * Check:  1575 kg with rotating mass, 2.5 m/s^2, 30 m/s, Crr m g = 176.5 N, c = 0.39: 133.95 kW.
 */
export function powerOfPull(
  log: Log,
  pull: Pull,
  car: Car,
  conditions: Conditions,
  options: PowerOptions = {},
): Result<PullPower> {
  const speed = channelOf(log, 'engineSpeed') ?? channelOf(log, 'vehicleSpeed') ?? channelOf(log, 'gpsSpeed');
  if (!speed) return fail({ code: 'power/no-speed', facts: {} });
  const window = pullWindow(log, pull, speed);
  const air = airOfPull(log, pull, conditions);
  const correction = pullCorrection(log, pull, car, air);
  const direct = directPower(log, pull, window, car, conditions, options);
  if (!direct.ok) return direct;
  if (direct.value.power)
    return ok(corrected(direct.value.power, correction, [...direct.value.notes, ...correction.notes]));

  const grade = gradeOfPull(log, window, conditions);
  const load = roadLoad(car, air, grade.grade, grade.uncertainty);
  const wheels = wheelMass(car);
  const mass = car.mass_kg + wheels.mass;
  const forceAt = (v: number, a: number) => mass * a + loadAt(load, v);
  const fused = fusedSpeed(log, pull, window, car, forceAt, options.speedLag ?? null);
  if (!fused.ok) return fail(...fused.problems, ...direct.value.notes.flatMap(asProblem));
  const notes: Note[] = [
    ...direct.value.notes,
    ...fused.value.notes,
    ...grade.notes,
    ...load.notes,
    ...wheels.notes,
  ];
  if (window.trimmed > 0) notes.push({ code: 'power/pull-trimmed', facts: { seconds: window.trimmed } });
  const start = toldFrom(log, window, fused.value.interval);
  const end = log.time[window.to - 1] as number;
  const efficiency = car.drivetrainEfficiency ?? practice.drivetrainEfficiency;
  if (car.drivetrainEfficiency === null)
    notes.push({ code: 'power/default-efficiency', facts: { efficiency } });
  if (car.engineInertia_kg_m2 === null) notes.push({ code: 'power/engine-inertia-not-counted', facts: {} });

  const track = trackOf(fused.value, start, end, forceAt);
  const settled = isAfterFall(log, window) ? settledAt(track.curve, track.time, latestTold(log, window)) : 0;
  const found = gridOf(track.engineSpeed.subarray(settled), pull, end - start);
  if (!found.ok) return found;
  const grid = found.value;
  const along = powersAlong(track, car, load, mass, efficiency, fused.value.scaleUncertainty);
  const read = readAt(track.engineSpeed, grid);
  const wheelPower = read(along.wheelPower);
  const power = {
    engineSpeed_rad_s: grid,
    wheelPower,
    enginePower: read(along.enginePower),
    wheelPowerError: read(along.wheelPowerError),
    systematicError: withShift(read(along.systematicError), grid, wheelPower, fused.value.engineUncertainty),
    time: read(track.time),
    bandwidth: fused.value.estimator.fullWidth(),
    basis: fused.value.basis,
  };
  return ok(corrected(power, correction, [...notes, ...correction.notes]));
}

/** A reading that was left aside matters once acceleration tells nothing either. */
function asProblem(note: Note): Problem[] {
  if (note.code !== 'power/reading-left-aside') return [];
  const { column, why } = note.facts;
  return [{ code: 'power/dyno-reading-unusable', facts: { column, why } }];
}

/** Grid inside rising engine speeds, or why there is none. */
function gridOf(engineSpeed: Float64Array, pull: Pull, seconds: number): Result<Float64Array> {
  const grid = speedGrid(engineSpeed[0] as number, engineSpeed.at(-1) as number);
  if (!grid.ok || grid.value.length >= 3) return grid;
  return seconds < 0.8
    ? fail({ code: 'power/pull-too-short', facts: { samples: pull.to - pull.from, seconds } })
    : fail({ code: 'power/not-accelerating', facts: { from_s: pull.start_s, to_s: pull.end_s } });
}

/** Source of the sum: JCGM 100:2008 (GUM), equation 12. */
function corrected(
  power: Omit<PullPower, 'correction' | 'notes'>,
  { standard, factor, uncertainty }: PullCorrection,
  notes: readonly Note[],
): PullPower {
  const times = (values: Float64Array) => (factor === 1 ? values : values.map((x) => x * factor));
  return {
    ...power,
    wheelPower: times(power.wheelPower),
    enginePower: times(power.enginePower),
    wheelPowerError: times(power.wheelPowerError),
    systematicError: times(
      power.systematicError.map((u, i) => Math.hypot(u, uncertainty * (power.wheelPower[i] as number))),
    ),
    correction: { standard, factor },
    notes: once(notes),
  };
}

function once(notes: readonly Note[]): readonly Note[] {
  return notes.filter((note, i) => {
    const isSame = (other: Note) =>
      other.code === note.code && JSON.stringify(other) === JSON.stringify(note);
    return !notes.slice(0, i).some(isSame);
  });
}

export const explainWheelPower: FormulaCard = {
  formula: 'Pw = ((m + Iw / r^2) dv/dt + a + b v + c v^2 + m g sin(atan s)) v',
  inputs: [
    input('m', 'kg', 'mass as driven'),
    input('Iw', 'kg m^2', 'inertia of all wheels'),
    input('r', 'm', 'rolling radius'),
    input('v', 'm/s', 'road speed, smoothed'),
    input('a, b, c', 'N, N s/m, N s^2/m^2', 'road load'),
    input('s', '1', 'rise per distance'),
  ],
  source: 'Newton’s second law; Gillespie, Fundamentals of Vehicle Dynamics, chapter 2 (from memory)',
  validRange:
    'one gear, clutch closed, still air, 0.15 s and more after full throttle; 1.5 % RMS at 20 Hz on generated drives',
};

export const explainEnginePower: FormulaCard = {
  formula: 'Pe = Pw / eta + Ie w dw/dt',
  inputs: [
    input('Pw', 'W', 'wheel power'),
    input('eta', '1', 'drivetrain efficiency, wheel over crank power'),
    input('Ie', 'kg m^2', 'inertia of the engine'),
    input('w', 'rad/s', 'engine speed'),
  ],
  source: 'energy balance; efficiency 0.82 to 0.92 is common practice',
  validRange: 'as wheel power; the efficiency is rarely known better than 3 %',
};
