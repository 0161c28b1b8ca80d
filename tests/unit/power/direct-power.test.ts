import { describe, expect, it } from 'vitest';
import { CarSchema, ConditionsSchema, powerOfPull } from '../../../core/power/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { rpm } from '../../../core/units/index.ts';
import { channelFrom, drive, logOf, pullOf } from '../../support/drive-generator.ts';
import { normal, seeded } from '../../support/random.ts';

const torqueAt = (w: number) => 240 + 60 * Math.sin((w - rpm(2500)) / rpm(1300));
const dyno = ConditionsSchema.parse({ place: 'dyno' });
const car = CarSchema.parse({
  mass_kg: 1400,
  gearRatios: [3.3, 2.0, 1.36],
  finalDrive: 3.9,
  pullGear: 3,
  drivetrainEfficiency: 0.88,
});

/** A ramp of 400 rpm per second, 20 rows a second. */
function ramp(column: 'wheelTorque' | 'wheelPower' | 'engineTorque' | 'enginePower', factor = 1) {
  const gauss = normal(seeded(11));
  const time = Float64Array.from({ length: 200 }, (_, i) => i / 20);
  const speed = time.map((t) => rpm(2500 + 400 * t));
  const values = speed.map((w) => {
    const torque = (torqueAt(w) + 1.5 * gauss()) * factor;
    return column.endsWith('Power') ? torque * w : torque;
  });
  const log = logOf(time, [
    channelFrom('rpm', 'engineSpeed', 'rpm', speed),
    channelFrom('reading', column, column.endsWith('Power') ? 'kW' : 'Nm', values),
  ]);
  return { log, pull: pullOf(time, 0, 200, 2500, 6480) };
}

function worstShare(found: { engineSpeed_rad_s: Float64Array }, values: Float64Array, scale = 1): number {
  return values.reduce((most, p, i) => {
    const w = found.engineSpeed_rad_s[i] as number;
    return Math.max(most, Math.abs(p / (torqueAt(w) * w * scale) - 1));
  }, 0);
}

describe('a dyno log', () => {
  it.each([
    ['wheelTorque', 'torque-channel'],
    ['wheelPower', 'power-channel'],
  ] as const)('with %s is read directly', (column, basis) => {
    const { log, pull } = ramp(column);
    const found = unwrap(powerOfPull(log, pull, car, dyno));
    expect(found.basis).toBe(basis);
    expect(worstShare(found, found.wheelPower)).toBeLessThan(0.01);
    expect(worstShare(found, found.enginePower, 1 / 0.88)).toBeLessThan(0.01);
  });

  it.each(['engineTorque', 'enginePower'] as const)(
    'with %s gives the wheels what the gears leave',
    (column) => {
      const { log, pull } = ramp(column);
      const found = unwrap(powerOfPull(log, pull, car, dyno));
      expect(worstShare(found, found.enginePower)).toBeLessThan(0.01);
      expect(worstShare(found, found.wheelPower, 0.88)).toBeLessThan(0.01);
    },
  );

  it('with axle torque is turned at the axle', () => {
    const { log, pull } = ramp('wheelTorque', 1.36 * 3.9);
    const found = unwrap(powerOfPull(log, pull, car, dyno));
    expect(worstShare(found, found.wheelPower)).toBeLessThan(0.01);
  });

  it('gets back what the ramp hides where the inertia is given', () => {
    const { log, pull } = ramp('wheelPower');
    const given = ConditionsSchema.parse({ place: 'dyno', rampInertiaEngine_kg_m2: 0.5 });
    const found = unwrap(powerOfPull(log, pull, car, given));
    const plain = unwrap(powerOfPull(log, pull, car, dyno));
    found.wheelPower.forEach((p, i) => {
      const w = found.engineSpeed_rad_s[i] as number;
      expect(p - (plain.wheelPower[i] as number)).toBeCloseTo(0.5 * w * rpm(400), -1);
    });
    expect(found.notes.map((n) => n.code)).toContain('power/ramp-inertia-added');
  });

  it('gets back what rollers hide, their inertia seen through gear and final drive', () => {
    const { log, pull } = ramp('wheelPower');
    const given = ConditionsSchema.parse({ place: 'dyno', rampInertiaWheel_kg_m2: 12 });
    const found = unwrap(powerOfPull(log, pull, car, given));
    const plain = unwrap(powerOfPull(log, pull, car, dyno));
    const noted = found.notes.find((n) => n.code === 'power/ramp-inertia-added');
    expect(noted?.facts.inertia).toBeCloseTo(12 / (1.36 * 3.9) ** 2, 6);
    const last = found.wheelPower.length - 5;
    const w = found.engineSpeed_rad_s[last] as number;
    const added = (found.wheelPower[last] as number) - (plain.wheelPower[last] as number);
    expect(added).toBeCloseTo(0.4266 * w * rpm(400), -2);
    const without = unwrap(powerOfPull(log, pull, { ...car, gearRatios: [] }, given));
    expect(without.wheelPower).toEqual(plain.wheelPower);
    expect(without.notes.map((n) => n.code)).toContain('power/ramp-inertia-no-gear');
  });

  it('of speeds alone tells no power: nobody knows the rollers', () => {
    const { log, pull } = ramp('wheelPower');
    const bare = { ...log, channels: log.channels.slice(0, 1) };
    expect(powerOfPull(bare, pull, car, dyno)).toMatchObject({
      ok: false,
      problems: [{ code: 'power/no-dyno-reading' }],
    });
  });

  it('asked for a correction says that the dyno may have made it already', () => {
    const { log, pull } = ramp('wheelPower');
    const conditions = ConditionsSchema.parse({ place: 'dyno', ambient_C: 30, barometer_kPa: 98 });
    const found = unwrap(powerOfPull(log, pull, { ...car, correction: 'DIN 70020' }, conditions));
    expect(found.notes.map((n) => n.code)).toContain('power/dyno-correction-unknown');
    expect(found.correction.factor).toBeCloseTo((1013 / 980) * Math.sqrt(303 / 293), 6);
    expect(worstShare(found, found.wheelPower, found.correction.factor)).toBeLessThan(0.01);
  });
});

describe('a road log', () => {
  it("does not take the control unit's torque for a measurement", () => {
    const d = drive();
    const model = channelFrom('Torque', 'engineTorque', 'Nm', new Float64Array(d.log.time.length).fill(999));
    const log = { ...d.log, channels: [...d.log.channels, model] };
    const plain = unwrap(powerOfPull(d.log, d.pull, d.car, d.conditions));
    const found = unwrap(powerOfPull(log, d.pull, d.car, d.conditions));
    expect(found.wheelPower).toEqual(plain.wheelPower);
    expect(found.notes.map((n) => n.code)).toContain('power/torque-channel-not-used');
  });

  it('takes even a wheel power column only when told that it is a dyno', () => {
    const d = drive();
    // One and the same number all along would be no reading.
    const values = Float64Array.from(d.log.time, (_, i) => 50e3 + (i % 2));
    const column = channelFrom('P', 'wheelPower', 'kW', values);
    const log = { ...d.log, channels: [...d.log.channels, column] };
    expect(unwrap(powerOfPull(log, d.pull, d.car, d.conditions)).basis).not.toBe('power-channel');
    const found = unwrap(powerOfPull(log, d.pull, d.car, d.conditions, { basis: 'dyno' }));
    expect(found.basis).toBe('power-channel');
    expect(found.wheelPower[5]).toBeCloseTo(50e3, 0);
  });
});
