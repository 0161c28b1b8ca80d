import { describe, expect, it } from 'vitest';
import { channelOf, type Log } from '../../../core/log/index.ts';
import { CarSchema, type PullPower, powerOfPull, unknownConditions } from '../../../core/power/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { rpm } from '../../../core/units/index.ts';
import {
  boostedCurve,
  type Drive,
  type Driven,
  drive,
  errorAgainst,
  usualDrive,
} from '../../support/drive-generator.ts';

const powerOf = (d: Driven): PullPower => unwrap(powerOfPull(d.log, d.pull, d.car, d.conditions));

/** Root mean square over several pulls, each with its own noise. */
function rmsOf(given: Partial<Drive>, seeds = 4): number {
  let squares = 0;
  for (let seed = 1; seed <= seeds; seed++) {
    const d = drive({ ...given, seed });
    squares += errorAgainst(d.truth, powerOf(d)).rms ** 2;
  }
  return Math.sqrt(squares / seeds);
}

const usualCurves = {
  'boost at 2900 rpm': boostedCurve(290, 2900, 180, 5200),
  'early, soft boost': boostedCurve(250, 3000, 400, 5500),
  'no boost at all': (w: number) => 220 * w,
};

describe.each(Object.entries(usualCurves))('wheel power, %s', (_, wheelPower) => {
  it('is within 1.5 % RMS of the truth at 20 Hz with realistic noise', () => {
    expect(rmsOf({ wheelPower, slip: 0.02 })).toBeLessThan(0.015);
  });

  it('is within 3 % RMS at 10 Hz with speed in steps of 1 km/h and engine speed in steps of 25 rpm', () => {
    const coarse = {
      rate: 10,
      engineSpeed: { noise: rpm(5), step: rpm(25) },
      vehicleSpeed: { noise: 0.1 / 3.6, step: 1 / 3.6 },
    };
    expect(rmsOf({ wheelPower, slip: 0.02, ...coarse })).toBeLessThan(0.03);
  });
});

describe('wheel power of a short pull in second gear', () => {
  const second = { gearRatio: 2, slip: 0.02 };

  it.each([
    ['a steep onset', boostedCurve(250, 3400, 110, 5200)],
    ['boost cut off at its top', (w: number) => w * Math.min(260, 140 + 1.1 * Math.max(0, w - rpm(2900)))],
  ])('with %s is within 1.5 % RMS at 20 Hz', (_, wheelPower) => {
    expect(rmsOf({ ...second, wheelPower }, 8)).toBeLessThan(0.015);
  });

  it('is within 3 % RMS at 10 Hz with speed in steps of 1 km/h and engine speed in steps of 25 rpm', () => {
    const coarse = {
      rate: 10,
      engineSpeed: { noise: rpm(5), step: rpm(25) },
      vehicleSpeed: { noise: 0.1 / 3.6, step: 1 / 3.6 },
    };
    expect(rmsOf({ ...second, ...coarse, wheelPower: boostedCurve(250, 3400, 110, 5200) }, 8)).toBeLessThan(
      0.03,
    );
  });
});

describe('what power rests on', () => {
  const d = drive({ slip: 0.02 });

  it('a car of which only the mass is known has a power, with each default said', () => {
    const car = CarSchema.parse({ mass_kg: 1420 });
    const found = unwrap(powerOfPull(d.log, d.pull, car, unknownConditions));
    const codes = found.notes.map((n) => n.code);
    for (const code of [
      'power/default-drag-area',
      'power/default-rolling',
      'power/default-air',
      'power/default-efficiency',
      'power/level-assumed',
      'power/wheel-inertia-not-counted',
      'power/engine-inertia-not-counted',
      'power/gearing-from-speed',
    ])
      expect(codes).toContain(code);
    expect(errorAgainst(d.truth, found).rms).toBeLessThan(0.02);
  });

  it('engine speed rises strictly, in whole multiples of 50 rpm, and time with it', () => {
    const found = powerOf(d);
    for (let i = 0; i < found.time.length; i++) {
      const steps = (found.engineSpeed_rad_s[i] as number) / rpm(50);
      expect(steps).toBeCloseTo(Math.round(steps), 6);
      if (i > 0) expect(found.time[i] as number).toBeGreaterThan(found.time[i - 1] as number);
    }
    expect(found.time.length).toBeGreaterThan(60);
  });

  it('slip is read from the two speeds', () => {
    const note = powerOf(d).notes.find((n) => n.code === 'power/slip-from-speed');
    expect(note?.code === 'power/slip-from-speed' && note.facts.slip).toBeCloseTo(0.02, 2);
  });

  it('a vehicle speed that shows no slip may be that of driven wheels, and that is said', () => {
    const saysSo = (log: Log, { pull, car, conditions }: Driven) =>
      unwrap(powerOfPull(log, pull, car, conditions)).notes.some(
        (n) => n.code === 'power/speed-of-driven-wheels',
      );
    let said = 0;
    for (let seed = 1; seed <= 20; seed++) {
      const free = drive({ slip: 0.02, seed });
      expect(saysSo(free.log, free)).toBe(false);
      // What a sensor at the gearbox reads: engine speed over the gearing, in steps of 0.1 km/h.
      const perMetre = (usualDrive.gearRatio * usualDrive.finalDrive) / usualDrive.radius;
      const engine = channelOf(free.log, 'engineSpeed')?.values ?? new Float64Array();
      const atGearbox = engine.map((w) => Math.round((w / perMetre) * 36) / 36);
      const channels = free.log.channels.map((c) =>
        c.quantity === 'vehicleSpeed' ? { ...c, values: atGearbox } : c,
      );
      if (saysSo({ ...free.log, channels }, free)) said++;
    }
    expect(said).toBeGreaterThan(14);
  });

  it('a vehicle speed that comes late is allowed for, and said', () => {
    const late = drive({ slip: 0.02, vehicleSpeed: { noise: 0.02, step: 0.1 / 3.6, lag: 0.15 } });
    const found = powerOf(late);
    const note = found.notes.find((n) => n.code === 'power/speed-late');
    expect(note?.code === 'power/speed-late' && Math.abs(note.facts.lag - 0.15)).toBeLessThan(0.04);
    expect(errorAgainst(late.truth, found).rms).toBeLessThan(0.015);
  });

  it.each([
    ['always the same', () => 1],
    ['as the square of force', (share: number) => share * share],
  ])('slip that is %s does no harm', (_, slipLaw) => {
    expect(rmsOf({ slip: 0.025, slipLaw }, 3)).toBeLessThan(0.015);
  });

  it('a car entered in the wrong gear is told that the speeds disagree, and the logged speed is believed', () => {
    const found = unwrap(powerOfPull(d.log, { ...d.pull, gear: 2 }, d.car, d.conditions));
    expect(found.notes.map((n) => n.code)).toContain('power/speeds-disagree');
    expect(errorAgainst(d.truth, found).rms).toBeLessThan(0.015);
  });

  it('turning wheels count in wheel power, the turning engine only in engine power', () => {
    const heavy = drive({ wheelInertia: 4 });
    expect(errorAgainst(heavy.truth, powerOf(heavy)).rms).toBeLessThan(0.015);
    // 4 kg m^2 on 0.308 m are 42 kg of 1420.
    const without = unwrap(
      powerOfPull(heavy.log, heavy.pull, { ...heavy.car, wheelInertia_kg_m2: 0 }, heavy.conditions),
    );
    expect(errorAgainst(heavy.truth, without).mean).toBeLessThan(-0.015);

    const turning = unwrap(powerOfPull(d.log, d.pull, { ...d.car, engineInertia_kg_m2: 0.2 }, d.conditions));
    const still = powerOf(d);
    expect(turning.wheelPower).toEqual(still.wheelPower);
    const i = 40;
    const w = still.engineSpeed_rad_s[i] as number;
    const rise =
      ((still.engineSpeed_rad_s[i + 1] as number) - (still.engineSpeed_rad_s[i - 1] as number)) /
      ((still.time[i + 1] as number) - (still.time[i - 1] as number));
    const more = (turning.enginePower[i] as number) - (still.enginePower[i] as number);
    expect(more / (0.2 * w * rise)).toBeCloseTo(1, 1);
    expect(still.enginePower[i]).toBeCloseTo((still.wheelPower[i] as number) / 0.88, 6);
  });

  it('a measured coast-down stands in for drag area and rolling', () => {
    const weight = 1420 * 9.80665;
    const roadLoad = { a_N: 0.012 * weight, b_N_s_m: 0, c_N_s2_m2: 0.5 * 1.2041 * 0.66, half_percent: 2 };
    const car = { ...d.car, dragArea_m2: null, rollingCoefficient: null, roadLoad };
    const found = unwrap(powerOfPull(d.log, d.pull, car, d.conditions));
    const plain = powerOf(d);
    found.wheelPower.forEach((p, i) => {
      expect(p / (plain.wheelPower[i] as number)).toBeCloseTo(1, 3);
    });
    expect(found.notes.map((n) => n.code)).not.toContain('power/default-drag-area');
    // Known to 2 %, it moves power by less than one that is believed to 10.
    const rough = unwrap(
      powerOfPull(d.log, d.pull, { ...car, roadLoad: { ...roadLoad, half_percent: 30 } }, d.conditions),
    );
    expect(found.systematicError.at(-1)).toBeLessThan(rough.systematicError.at(-1) as number);
  });

  it('a coast-down with a coefficient missing is left aside, and that is said', () => {
    const roadLoad = { a_N: 400, b_N_s_m: null, c_N_s2_m2: null, half_percent: null };
    const found = unwrap(powerOfPull(d.log, d.pull, { ...d.car, roadLoad }, d.conditions));
    expect(found.wheelPower).toEqual(powerOf(d).wheelPower);
    expect(found.notes.map((n) => n.code)).toContain('power/road-load-incomplete');
  });
});
