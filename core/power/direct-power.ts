import { type Channel, channelOf, type Log, type Pull } from '../log/index.ts';
import { fail, type Note, ok, type Result } from '../result/index.ts';
import type { Car } from './car/car.ts';
import { gearRatio } from './car/gearing.ts';
import type { Conditions } from './conditions.ts';
import { samplesOf } from './gather.ts';
import type { PowerOptions } from './power-of-pull.ts';
import { practice } from './practice.ts';
import type { PullPower } from './pull-power.ts';
import type { PullWindow } from './pull-window.ts';
import { curveTable } from './smoothing/curve-table.ts';
import { type SlopeEstimator, slopeEstimator } from './smoothing/slope-estimate.ts';
import { speedSignal } from './speed/speed-signal.ts';
import { speedGrid } from './speed-grid.ts';

type Reading = {
  readonly channel: Channel;
  readonly at: 'wheel' | 'engine';
  readonly is: 'power' | 'torque';
};

/**
 * Power as the dyno wrote it, where the log holds it; `power: null` where it must come from acceleration.
 *
 * - Wheel power or wheel torque is read unless the place is the road. Engine power or torque is read on a dyno,
 *   or where no speed of the car is logged: on the road such a channel is the control unit's own model.
 * - Wheel torque is torque times engine speed, as dynos print it (divided by the gear), unless that would be more
 *   than 0.5 kW per kg: then it is axle torque, turned at engine speed over gear and final drive.
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
  const none = (notes: readonly Note[] = []) => ok({ power: null, notes });
  const reading = readingOf(log);
  const engineSpeed = channelOf(log, 'engineSpeed');
  if (!reading && place === 'dyno') return fail({ code: 'power/no-dyno-reading', facts: {} });
  if (!reading) return none();
  const unused = [
    { code: 'power/torque-channel-not-used', facts: { column: reading.channel.column } },
  ] as const;
  const hasRoadSpeed =
    channelOf(log, 'vehicleSpeed') !== undefined || channelOf(log, 'gpsSpeed') !== undefined;
  const isUsed = place === 'dyno' || (place === null && (reading.at === 'wheel' || !hasRoadSpeed));
  if (!isUsed || !engineSpeed) return none(unused);

  const speed = speedSignal(log, engineSpeed, window.useFrom, window.useTo);
  const level = speedSignal(log, reading.channel, window.useFrom, window.useTo);
  if (!speed || !level || speed.time.length < 8)
    return fail({
      code: 'power/pull-too-short',
      facts: { samples: pull.to - pull.from, seconds: pull.end_s - pull.start_s },
    });
  const speeds = slopeEstimator(samplesOf([speed]));
  const levels = slopeEstimator(samplesOf([level]));
  const start = log.time[window.from] as number;
  const end = log.time[window.to - 1] as number;
  // Read between by cubics: the smoother sees nothing as short as these steps.
  const table = curveTable(speeds.along, start, end, Math.max(0.02, (end - start) / 250));
  const found = speedGrid(table.valueAt(start), table.valueAt(end));
  if (!found.ok) return found;
  const grid = found.value;
  if (grid.length < 3)
    return fail({ code: 'power/not-accelerating', facts: { from_s: pull.start_s, to_s: pull.end_s } });

  const divisor = reading.is === 'torque' ? torqueDivisor(reading, levels, grid, start, end, pull, car) : 1;
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
  const notes: Note[] = [];
  if (car.drivetrainEfficiency === null)
    notes.push({ code: 'power/default-efficiency', facts: { efficiency } });
  if (car.correction !== 'none')
    notes.push({ code: 'power/dyno-correction-unknown', facts: { column: reading.channel.column } });
  notes.push(...hidden.notes);
  return ok({
    power: {
      engineSpeed_rad_s: grid,
      wheelPower,
      enginePower,
      wheelPowerError,
      // Dynos agree with themselves far better than with each other; 2 % is common practice.
      systematicError: wheelPower.map((p) => 0.02 * p),
      time,
      bandwidth: levels.fullWidth(),
      basis: reading.is === 'torque' ? 'torque-channel' : 'power-channel',
    },
    notes,
  });
}

function readingOf(log: Log): Reading | null {
  const order = [
    ['wheelPower', 'wheel', 'power'],
    ['wheelTorque', 'wheel', 'torque'],
    ['enginePower', 'engine', 'power'],
    ['engineTorque', 'engine', 'torque'],
  ] as const;
  for (const [quantity, at, is] of order) {
    const channel = channelOf(log, quantity);
    if (channel) return { channel, at, is };
  }
  return null;
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

/** 1 for torque at the engine's speed, gear times final drive for axle torque. */
function torqueDivisor(
  reading: Reading,
  levels: SlopeEstimator,
  grid: Float64Array,
  start: number,
  end: number,
  pull: Pull,
  car: Car,
): number {
  const middle = levels.along(Float64Array.of((start + end) / 2)).value[0] as number;
  const asPrinted = middle * (grid[grid.length >> 1] as number);
  const ratio = gearRatio(car, pull.gear ?? car.pullGear);
  if (reading.at === 'engine' || asPrinted < 500 * car.mass_kg || !ratio || !car.finalDrive) return 1;
  return ratio * car.finalDrive;
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
