import { channelOf, type Log, type Pull } from '../log/index.ts';
import { fail, type Note, ok, type Result } from '../result/index.ts';
import type { Car } from './car/car.ts';
import { distancePerRadian, gearRatio } from './car/gearing.ts';
import type { Conditions } from './conditions.ts';
import { type Reading, readingsOf } from './dyno-reading.ts';
import { samplesOf } from './gather.ts';
import type { PowerOptions } from './power-of-pull.ts';
import { inputUncertainty, practice } from './practice.ts';
import type { PullPower } from './pull-power.ts';
import type { PullWindow } from './pull-window.ts';
import { readingLag } from './reading-lag.ts';
import { curveTable } from './smoothing/curve-table.ts';
import { slopeEstimator } from './smoothing/slope-estimate.ts';
import { roadSpeed } from './speed/road-speed.ts';
import { type SpeedSignal, speedSignal } from './speed/speed-signal.ts';
import { speedGrid } from './speed-grid.ts';
import { withLag, withShift } from './systematic-error.ts';

/**
 * Power as the dyno wrote it, where the log holds it; `power: null` where it must come from acceleration.
 *
 * - Wheel power or wheel torque is read unless the place is the road. Engine power or torque is read on a dyno,
 *   or where no speed of the car is logged: on the road such a channel is the control unit's own model. Wheel power is
 *   then that times drivetrain efficiency: a note says so, and the systematic error holds how little that is known.
 * - Wheel torque is torque times engine speed, as dynos print it (divided by the gear), unless what cars make is nearer
 *   to it as torque of the axle, turned at engine speed over gear and final drive; a note says which.
 * - A channel that says nothing in the pull (dyno-reading) gives way to the next, and that to acceleration.
 * - A reading that the lift behind the pull shows to be late (reading-lag) is not moved: how it was smoothed is not known.
 *   A note says so, and the systematic error holds what it rose by in that time.
 * - On a dyno whose log lacks engine speed it follows from road speed, gear and tyre.
 * - On a dyno without such a channel there is no power: power/no-dyno-reading.
 * - What a ramp hides in turning masses is added back where its inertia is given: I w dw/dt, with an inertia about the
 *   driven axle divided by the square of gear times final drive. Where these are not known it is not, and a note says so.
 */
export function directPower(
  log: Log,
  pull: Pull,
  window: PullWindow,
  car: Car,
  conditions: Conditions,
  options: PowerOptions,
): Result<{
  readonly power: Omit<PullPower, 'correction' | 'notes'> | null;
  readonly notes: readonly Note[];
}> {
  const place = options.basis ?? conditions.place;
  const { usable, unusable } = readingsOf(log, window);
  const aside = (instead: 'road' | 'channel') =>
    unusable.map(({ channel: { column }, why }): Note => {
      return { code: 'power/reading-left-aside', facts: { column, why, instead } };
    });
  const [reading] = usable;
  const [broken] = unusable;
  if (!reading && place === 'dyno')
    return broken
      ? fail({
          code: 'power/dyno-reading-unusable',
          facts: { column: broken.channel.column, why: broken.why },
        })
      : fail({ code: 'power/no-dyno-reading', facts: {} });
  if (!reading) return ok({ power: null, notes: aside('road') });
  const hasRoadSpeed =
    channelOf(log, 'vehicleSpeed') !== undefined || channelOf(log, 'gpsSpeed') !== undefined;
  const isUsed = place === 'dyno' || (place === null && (reading.at === 'wheel' || !hasRoadSpeed));
  if (!isUsed) {
    const { column } = reading.channel;
    return ok({
      power: null,
      notes: [...aside('road'), { code: 'power/torque-channel-not-used', facts: { column } }],
    });
  }
  const turning = engineSpeedOf(log, pull, window, car);
  if (!turning.ok) return turning;
  const speed = turning.value.signal;
  const level = speedSignal(log, reading.channel, window.useFrom, window.useTo);
  if (!speed || !level || speed.time.length < 8)
    return fail({
      code: 'power/pull-too-short',
      facts: { samples: pull.to - pull.from, seconds: pull.end_s - pull.start_s },
    });
  const speeds = slopeEstimator(samplesOf([speed]));
  const levels = slopeEstimator(samplesOf([level]));
  const { start, end } = whereRead(level, log.time[window.from] as number, log.time[window.to - 1] as number);
  // Read between by cubics: the smoother sees nothing as short as these steps.
  const table = curveTable(speeds.along, start, end, Math.max(0.02, (end - start) / 250));
  const found = speedGrid(table.valueAt(start), table.valueAt(end));
  if (!found.ok) return found;
  const grid = found.value;
  if (grid.length < 3)
    return fail({ code: 'power/not-accelerating', facts: { from_s: pull.start_s, to_s: pull.end_s } });

  const middle = levels.along(Float64Array.of((start + end) / 2)).value[0] as number;
  const asPrinted = middle * (grid[grid.length >> 1] as number);
  const { divisor, notes: torqueNotes } = torqueDivisor(reading, asPrinted, pull, car);
  const n = grid.length;
  const wheelPower = new Float64Array(n);
  const enginePower = new Float64Array(n);
  const wheelPowerError = new Float64Array(n);
  const time = grid.map((w) => timeWhere(table.valueAt, w, start, end));
  const { slope } = speeds.along(time);
  const read = levels.withErrors(time);
  const efficiency = car.drivetrainEfficiency ?? practice.drivetrainEfficiency;
  const inertia = car.engineInertia_kg_m2 ?? 0;
  const hidden = hiddenInertia(conditions, pull, car);
  const ramp = hidden.inertia;
  for (let i = 0; i < n; i++) {
    const w = grid[i] as number;
    const turn = reading.is === 'torque' ? w / divisor : 1;
    const acceleration = slope[i] as number;
    const measured = (read.value[i] as number) * turn + ramp * w * acceleration;
    const unseen = inertia * w * acceleration;
    wheelPower[i] = reading.at === 'wheel' ? measured : (measured - unseen) * efficiency;
    enginePower[i] = reading.at === 'wheel' ? measured / efficiency + unseen : measured;
    wheelPowerError[i] =
      Math.sqrt(read.valueVariance[i] as number) * turn * (reading.at === 'wheel' ? 1 : efficiency);
  }
  const engine = channelOf(log, 'engineSpeed');
  const lag = engine ? readingLag(log, window, reading.channel, engine) : 0;
  const { column, unit, reason } = reading.channel;
  const notes: Note[] = [...aside('channel'), ...turning.value.notes, ...torqueNotes];
  if (reason?.code === 'log/column-by-values')
    notes.push({ code: 'power/reading-unit-assumed', facts: { column, unit, is: reading.is } });
  if (lag > 0) notes.push({ code: 'power/reading-late', facts: { column, lag } });
  if (reading.at === 'engine') notes.push({ code: 'power/engine-reading', facts: { column, efficiency } });
  if (car.drivetrainEfficiency === null)
    notes.push({ code: 'power/default-efficiency', facts: { efficiency } });
  if (car.correction !== 'none') notes.push({ code: 'power/dyno-correction-unknown', facts: { column } });
  notes.push(...hidden.notes);
  return ok({
    power: {
      engineSpeed_rad_s: grid,
      wheelPower,
      enginePower,
      wheelPowerError,
      // A late reading is that of a lower engine speed.
      systematicError: withLag(
        systematicErrorOf(wheelPower, grid, reading, turning.value.uncertainty, car),
        time,
        wheelPower,
        lag,
      ),
      time,
      bandwidth: levels.fullWidth(),
      basis: reading.is === 'torque' ? 'torque-channel' : 'power-channel',
    },
    notes,
  });
}

/** Dynos agree with themselves far better than with each other; 2 % is common practice. */
const dynoError = 0.02;

/**
 * The dyno's own, with what an engine speed that was not logged does to torque and to where power stands, and what the
 * drivetrain's efficiency does to wheel power where the reading is the engine's.
 *
 * Source: JCGM 100:2008 (GUM), equation 12: relative uncertainties of factors add as squares.
 */
function systematicErrorOf(
  wheelPower: Float64Array,
  grid: Float64Array,
  { is, at }: Reading,
  bySpeed: number,
  car: Car,
) {
  const { efficiencyDefault, efficiencyGiven } = inputUncertainty;
  const known = car.drivetrainEfficiency === null ? efficiencyDefault : efficiencyGiven;
  const share = Math.hypot(dynoError, is === 'torque' ? bySpeed : 0, at === 'engine' ? known : 0);
  return withShift(
    wheelPower.map((p) => share * p),
    grid,
    wheelPower,
    bySpeed,
  );
}

/** A reading that begins later or ends sooner than this is not told beyond its own ends [s] (common practice). */
const silent_s = 0.5;

/** The part of the pull that a reading tells of. */
function whereRead({ time }: SpeedSignal, start: number, end: number): { start: number; end: number } {
  const [first, last] = [time[0] as number, time.at(-1) as number];
  return { start: first - start > silent_s ? first : start, end: end - last > silent_s ? last : end };
}

/** Engine speed of the pull as logged, else from road speed and gear, with its relative standard uncertainty. */
function engineSpeedOf(
  log: Log,
  pull: Pull,
  window: PullWindow,
  car: Car,
): Result<{
  readonly signal: SpeedSignal | null;
  readonly uncertainty: number;
  readonly notes: readonly Note[];
}> {
  const channel = channelOf(log, 'engineSpeed');
  if (channel) {
    const signal = speedSignal(log, channel, window.useFrom, window.useTo);
    return ok({ signal, uncertainty: 0, notes: [] });
  }
  const road = roadSpeed(log, pull, window, null);
  const gearing = distancePerRadian(car, pull.gear ?? car.pullGear);
  if (!gearing.ok) {
    const [{ code, facts }] = gearing.problems;
    const missing = code === 'power/no-gearing' ? facts.missing : 'gearRatios';
    return fail({ code: 'power/no-engine-speed', facts: { missing } });
  }
  const { distance, uncertainty, notes } = gearing.value;
  // Nearly all of a pull is at full force.
  const perSpeed = (1 + (car.tyreSlip ?? practice.tyreSlip)) / distance;
  const scaled = road && {
    ...road,
    value: road.value.map((v) => v * perSpeed),
    noise: road.noise * perSpeed,
  };
  const slip = car.tyreSlip === null ? inputUncertainty.slipDefault : inputUncertainty.slipGiven;
  return ok({
    signal: scaled,
    uncertainty: Math.hypot(uncertainty, slip),
    notes: [...notes, { code: 'power/dyno-speed-by-gear', facts: {} }],
  });
}

/**
 * Inertia that the dyno's reading leaves out in a ramp, at the engine's speed [kg m^2].
 *
 * Check: 12 kg m^2 about the axle in a gear of 1.36 with a final drive of 3.9 are 0.4266 kg m^2.
 */
function hiddenInertia(
  conditions: Conditions,
  pull: Pull,
  car: Car,
): { inertia: number; notes: readonly Note[] } {
  const engine = conditions.rampInertiaEngine_kg_m2 ?? 0;
  const wheel = conditions.rampInertiaWheel_kg_m2 ?? 0;
  const ratio = gearRatio(car, pull.gear ?? car.pullGear);
  const isKnown = ratio !== undefined && car.finalDrive !== null;
  const inertia = engine + (wheel > 0 && isKnown ? wheel / (ratio * (car.finalDrive as number)) ** 2 : 0);
  const notes: Note[] = [];
  if (inertia > 0) notes.push({ code: 'power/ramp-inertia-added', facts: { inertia } });
  if (wheel > 0 && !isKnown) notes.push({ code: 'power/ramp-inertia-no-gear', facts: {} });
  return { inertia, notes };
}

/** Half way up a pull a tuned car makes this at the wheels, most of them 0.06 to 0.35 (common practice) [W/kg]. */
const usualPerMass = 150;

/** 1 for torque at the engine's speed, gear times final drive for torque of the axle: what cars make is nearer to it. */
function torqueDivisor(
  reading: Reading,
  asPrinted: number,
  pull: Pull,
  car: Car,
): { divisor: number; notes: readonly Note[] } {
  if (reading.is === 'power' || reading.at === 'engine') return { divisor: 1, notes: [] };
  const { column } = reading.channel;
  const gear = gearRatio(car, pull.gear ?? car.pullGear);
  const ratio = gear !== undefined && car.finalDrive !== null ? gear * car.finalDrive : null;
  const isAxle = ratio !== null && asPrinted / car.mass_kg > usualPerMass * Math.sqrt(ratio);
  const at = isAxle ? 'axle' : 'engine-speed';
  return {
    divisor: isAxle ? ratio : 1,
    notes: [{ code: 'power/wheel-torque-read', facts: { column, at, ratio } }],
  };
}

/** Instant at which the smoothed engine speed passes w, by halving. */
function timeWhere(speedAt: (t: number) => number, w: number, start: number, end: number): number {
  let low = start;
  let high = end;
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (speedAt(middle) < w) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
